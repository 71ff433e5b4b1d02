using System.Collections.Immutable;

using ScottPlot;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Compare;

/// <summary>One setup in overlaid pictures.</summary>
/// <param name="Mark">Its letter.</param>
/// <param name="Title">Its title.</param>
/// <param name="Samples">Its run.</param>
/// <param name="Color">Its colour.</param>
/// <param name="Dashes">Its line style, so that a grey print works; null: solid.</param>
internal sealed record DrawnSetup(string Mark, string Title, RunSamples Samples, SKColor Color, float[]? Dashes)
{
    /// <summary>For the plotting library.</summary>
    public LinePattern Pattern => SetupStyles.Pattern(Dashes);
}

/// <summary>Colours and line styles of setups beside each other, and the key that names them.</summary>
internal static class SetupStyles
{
    private const float Row = 18;

    private static readonly ImmutableArray<float[]?> s_dashes = [null, [8, 4], [2, 3], [8, 3, 2, 3], [14, 4], [4, 3]];

    /// <summary>Setups that are drawn; more could not be told apart.</summary>
    public static int Most => Palette.Setups.Length;

    /// <summary>A setup by its place among those drawn.</summary>
    public static DrawnSetup Of(int place, string mark, string title, RunSamples samples) =>
        new(mark, title, samples, Palette.Setups[place], s_dashes[place]);

    /// <summary>Colour and line style of a place among those drawn.</summary>
    public static (SKColor Color, LinePattern Pattern) Line(int place) => (Palette.Setups[place], Pattern(s_dashes[place]));

    /// <summary>Dashes for the plotting library; null: solid.</summary>
    public static LinePattern Pattern(float[]? dashes) => dashes is null ? LinePattern.Solid : new LinePattern(dashes, 0, "setup");

    /// <summary>Names the setups, a row each; gives the height below.</summary>
    public static float Key(Sheet sheet, ImmutableArray<DrawnSetup> setups, float left, float top)
    {
        float y = top;
        foreach (DrawnSetup setup in setups)
        {
            float middle = y + (Row / 2);
            string text = Shorten($"{setup.Mark}  {setup.Title}", Sheet.Width - left - 60);
            sheet.Over(canvas =>
            {
                Marks.Line(canvas, new(left, middle), new(left + 34, middle), setup.Color, 2.5f, setup.Dashes);
                Text.Draw(canvas, text, SKRect.Create(left + 42, middle - 7, 0, Text.Small + 2), Palette.Ink);
            });
            y += Row;
        }

        return y + 6;
    }

    /// <summary>A text cut to a width, px.</summary>
    public static string Shorten(string text, float width)
    {
        if (Text.Size(text).Width <= width) return text;
        int length = text.Length;
        while (length > 1 && Text.Size(text[..length] + "…").Width > width) length--;
        return text[..length] + "…";
    }
}
