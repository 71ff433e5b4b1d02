namespace QuarterCar.Scenarios.Weighing;

/// <summary>Messages of the reader of measurements that the scenario's lack: the "found" or "wanted" halves.</summary>
internal static class MeasuredTexts
{
    public const string MeasuredFile = "a file of measured corners (YAML)";
    public const string AtMostFree = "a loaded length that is not above the free length";
    public const string AtLeastSolid = "a loaded length that is not below the solid length by more than the length error";
    public const string WithinStroke = "a shaft showing that is not above the stroke";
    public const string ShowingForGas = "the shaft showing: the gas share hangs on it";
    public const string StrokeForGas = "the stroke: the gas share hangs on it";
    public const string OneOrTwo = "a length with its unit, or two, separated by a comma: settled from below, from above";
    public const string NameOnce = "another name: each corner's once";
}
