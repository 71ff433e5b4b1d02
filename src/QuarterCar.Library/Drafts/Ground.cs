using System.Collections.Immutable;
using System.Globalization;

using UnitsNet;

namespace QuarterCar.Drafts;

/// <summary>One piece of ground.</summary>
public sealed record Ground
{
    private Ground(string name, string? value, params (string Key, string Value)[] keys) => (Name, Value, Keys) = (name, value, [.. keys]);

    internal string Name { get; }

    internal string? Value { get; }

    internal ImmutableArray<(string Key, string Value)> Keys { get; }

    /// <summary>Level ground.</summary>
    public static Ground Flat(Length length) => new("flat", QuantityTexts.Of(length));

    /// <summary>A vertical step, down negative.</summary>
    public static Ground Step(Length height) => new("step", QuantityTexts.Of(height));

    /// <summary>A straight slope, down negative; its length along the level.</summary>
    public static Ground Ramp(Length rise, Length length) => new("ramp", null, ("rise", QuantityTexts.Of(rise)), ("length", QuantityTexts.Of(length)));

    /// <summary>One haversine, a dip negative; its length along the level.</summary>
    public static Ground Bump(Length height, Length length) => new("bump", null, ("height", QuantityTexts.Of(height)), ("length", QuantityTexts.Of(length)));

    /// <summary>Haversines end to end: height from trough to crest, spacing from crest to crest.</summary>
    public static Ground Whoops(Length height, Length spacing, int count) =>
        new("whoops", null, ("height", QuantityTexts.Of(height)), ("spacing", QuantityTexts.Of(spacing)), ("count", count.ToString(CultureInfo.InvariantCulture)));

    /// <summary>A random road of an ISO 8608 class, A smooth to H rough; the same seed gives the same road.</summary>
    public static Ground Random(char iso8608, Length length, ulong seed) =>
        new("random", null, ("iso8608", iso8608.ToString()), ("length", QuantityTexts.Of(length)), ("seed", seed.ToString(CultureInfo.InvariantCulture)));

    /// <summary>A measured profile: CSV in the scenario's folder, columns distance_&lt;unit&gt; and height_&lt;unit&gt;.</summary>
    public static Ground Profile(string file) => new("profile", null, ("file", file));
}
