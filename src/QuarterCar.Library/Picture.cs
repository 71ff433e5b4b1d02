using QuarterCar.Reports.Plots;

namespace QuarterCar;

/// <summary>One picture of the result files by itself, for a notebook or a page of your own: one question, its title says the answer. 800 px wide.</summary>
public sealed class Picture
{
    private readonly DrawnPicture _drawn;

    internal Picture(DrawnPicture drawn) => _drawn = drawn;

    /// <summary>Its file name without ending: shaft_travel, travel_use, force_travel and so on.</summary>
    public string Name => _drawn.Name;

    /// <summary>The answer in words.</summary>
    public string Title => _drawn.Title;

    /// <summary>One sentence: what to look for.</summary>
    public string Caption => _drawn.Caption;

    /// <summary>Makes ScottPlot letter your own plots with the typeface of these pictures, on a machine without fonts too.</summary>
    public static void UseTypeface() => DrawnPicture.UseTypeface();

    /// <summary>As PNG.</summary>
    /// <param name="scale">Pixels a px; 2 is sharp in print.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0 and at most 10.</exception>
    public byte[] Png(double scale = 2)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scale);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(scale, 10);
        return _drawn.Png((float)scale);
    }

    /// <summary>As SVG; its text stays text.</summary>
    public string Svg() => _drawn.Svg();

    /// <summary>Title and caption: the picture for who does not see it.</summary>
    public override string ToString() => $"{Title.TrimEnd('.')}. {Caption}";

    internal static IReadOnlyList<Picture> All(IEnumerable<DrawnPicture> drawn) => [.. drawn.Select(d => new Picture(d))];
}
