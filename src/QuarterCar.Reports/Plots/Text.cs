using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Text on a sheet, px at a width of 800.</summary>
internal static class Text
{
    /// <summary>Ticks, labels.</summary>
    public const float Small = 12.5f;

    /// <summary>The title.</summary>
    public const float Title = 17;

    private static readonly SKFont SmallFont = Font(PlotFont.Regular, Small);

    private static readonly SKFont SmallBold = Font(PlotFont.Bold, Small);

    private static readonly SKFont TitleFont = Font(PlotFont.Bold, Title);

    /// <summary>Size of a label.</summary>
    public static SKSize Size(string text, bool bold = false) => new((bold ? SmallBold : SmallFont).MeasureText(text), Small + 2);

    /// <summary>Draws a label into its place.</summary>
    public static void Draw(SKCanvas canvas, string text, SKRect place, SKColor color, bool bold = false)
    {
        using var paint = new SKPaint { Color = color, IsAntialias = true };
        canvas.DrawText(text, place.Left, place.Bottom - 3.5f, bold ? SmallBold : SmallFont, paint);
    }

    /// <summary>Draws the title, over as many lines as it needs; gives the height below it.</summary>
    public static float DrawTitle(SKCanvas canvas, IReadOnlyList<string> lines, float left, float top)
    {
        using var paint = new SKPaint { Color = Palette.Ink, IsAntialias = true };
        float y = top + Title;
        foreach (string line in lines)
        {
            canvas.DrawText(line, left, y, TitleFont, paint);
            y += Title + 5;
        }

        return y - 5;
    }

    /// <summary>Breaks a title between words.</summary>
    public static List<string> Wrap(string text, float width) => Wrap(text, width, TitleFont);

    /// <summary>Breaks a note between words.</summary>
    public static List<string> WrapSmall(string text, float width) => Wrap(text, width, SmallFont);

    private static List<string> Wrap(string text, float width, SKFont font)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && font.MeasureText(longer) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines;
    }

    private static SKFont Font(SKTypeface typeface, float size) => new(typeface, size) { Edging = SKFontEdging.Antialias, Subpixel = true };
}
