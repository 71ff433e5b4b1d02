namespace QuarterCar.Reports.Words;

/// <summary>What every page has to say once about its limits and about handling springs and gas.</summary>
internal static class Cautions
{
    /// <summary>Springs and gas.</summary>
    public const string Springs =
        "Springs under compression and gas under pressure can injure. Unload and depressurise as the maker of the parts says, use a spring compressor rated for "
        + "the load, and leave what local codes reserve for licensed practice to those who hold the licence.";

    /// <summary>Beside the figures of fit, which lead to the wrench.</summary>
    public const string Wrench =
        "Assemble with a compressor rated for that force, never with straps or improvised clamps, and stay out of the spring's line; taking apart releases the "
        + "same energy. Turn the coil nut only with the shaft fully extended and the vehicle on rated stands.";

    /// <summary>True where setups differ in what a wrench changes, so that an answer leads to springs and gas.</summary>
    /// <param name="paths">What is varied; none where whole scenarios are compared.</param>
    /// <param name="held">True where the preload is found.</param>
    public static bool Wrenched(IEnumerable<string> paths, bool held) => held || !paths.Any() || paths.Any(p => p.StartsWith("coilover", StringComparison.Ordinal));

    /// <summary>Metal or bound coils were met.</summary>
    public const string Metal = "This setup meets metal or binds its coils on this course: it is not one to drive as it stands.";

    /// <summary>Beside a peak force that hangs on an assumed stiffness.</summary>
    public const string Assumed = "not a strength figure";

    /// <summary>Beside the weighted r.m.s. and the dose value.</summary>
    public const string Ride =
        "Weighted r.m.s. and vibration dose value are ISO 2631-1's W_k taken on the chassis over this corner, not on a seat or a person: they compare setups on "
        + "steady rough ground, and are no verdict on single hits or on anyone's health.";

    /// <summary>Explains <see cref="Assumed"/>.</summary>
    public const string AssumedLong =
        "Peak forces marked “not a strength figure” hang on a stiffness of metal or bound coils that is assumed, not measured: they rank setups and size no part.";

    /// <summary>What a quarter-car cannot know.</summary>
    public static readonly string[] Unknown =
    [
        "Pitch and roll of the whole vehicle, and load that moves between its corners.",
        "Side load on the tyre's sidewall, and whether the bead holds.",
        "Strength of frame, mounts, links and the shock itself.",
        "Driveline angles and plunge over the travel.",
        "Brake-hose length and routing at full droop.",
        "Clearance of steering and tyre to body and links.",
        "Whether the vehicle rolls over.",
    ];
}
