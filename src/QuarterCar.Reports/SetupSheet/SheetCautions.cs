namespace QuarterCar.Reports.SetupSheet;

/// <summary>Cautions of the sheet, each standing beside the number that leads to the wrench.</summary>
internal static class SheetCautions
{
    public const string Raised =
        "Level ground, rated stands, chocks at the wheels that stay down. Nobody under it while it is raised, lowered or settles; hands clear of coils.";

    public const string Gas =
        "Dry nitrogen only, through a regulator. Empty it before anything is opened. A body just driven burns. Charging and service belong to those licensed for it.";

    public const string Compressor =
        "Springs under compression can maim. Never straps or improvised clamps; stay out of the spring’s line. Taking apart releases the same energy.";

    public const string Nut =
        "Never loosen the nut under the vehicle’s weight: raise it first until the shaft is fully extended. Taking apart releases this energy.";

    public const string StopNut =
        "Only with the slider clear of it. Jam the two stop nuts against each other, and check them again after the first drive.";

    public const string Settle =
        "Nobody under it, hands clear of coils while it settles. Raise it again before the next turn of a nut.";

    public const string Defer =
        "Local codes, the parts makers’ instructions and licensed practice go before this sheet. It is worked out for one corner from the values in the scenario.";
}
