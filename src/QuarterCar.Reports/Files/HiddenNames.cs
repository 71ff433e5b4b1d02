namespace QuarterCar.Reports.Files;

/// <summary>Names that files and folders have beside results while these are written; <see cref="IoWords"/> keeps them out of messages.</summary>
internal static class HiddenNames
{
    /// <summary>How all of them begin.</summary>
    public const string Prefix = ".quartercar-";

    /// <summary>Begins the name of what is not yet in its place.</summary>
    public const string Part = Prefix + "part-";

    /// <summary>The lock of a folder; begins the name of a file's.</summary>
    public const string Lock = Prefix + "lock";

    /// <summary>Begins the name of a file that only tries whether one can be made.</summary>
    public const string Probe = Prefix + "probe-";
}
