using QuarterCar.Reports.Words;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>Marks and labels that several pictures share.</summary>
internal static class Marks
{
    /// <summary>A filled rectangle, below the data.</summary>
    public static void Band(SKCanvas canvas, SKRect rect, SKColor color)
    {
        using var paint = new SKPaint { Color = color };
        canvas.DrawRect(rect, paint);
    }

    /// <summary>A thin help line.</summary>
    public static void Line(SKCanvas canvas, SKPoint from, SKPoint to, SKColor color, float width = 1, float[]? dash = null)
    {
        using var effect = dash is null ? null : SKPathEffect.CreateDash(dash, 0);
        using var paint = new SKPaint { Color = color, StrokeWidth = width, IsAntialias = true, Style = SKPaintStyle.Stroke, PathEffect = effect };
        canvas.DrawLine(from, to, paint);
    }

    /// <summary>One mark a kind of event: diamonds for contacts, triangles up and down where the tyre leaves and lands, squares where coils bind, rings for the rest.</summary>
    public static void Event(SKCanvas canvas, SKPoint at, string name = "")
    {
        const float r = 5;
        using var fill = new SKPaint { Color = EventWords.IsContact(name) ? Palette.Contact : SKColors.White, IsAntialias = true };
        using var edge = new SKPaint { Color = Palette.Ink, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 1.2f };
        using var path = new SKPath();
        if (EventWords.IsContact(name)) path.AddPoly([new(at.X, at.Y - r - 1), new(at.X + r + 1, at.Y), new(at.X, at.Y + r + 1), new(at.X - r - 1, at.Y)]);
        else if (name == "liftoff") path.AddPoly([new(at.X, at.Y - r), new(at.X + r, at.Y + r - 1), new(at.X - r, at.Y + r - 1)]);
        else if (name == "touchdown") path.AddPoly([new(at.X, at.Y + r), new(at.X + r, at.Y - r + 1), new(at.X - r, at.Y - r + 1)]);
        else if (name.EndsWith("_bind", StringComparison.Ordinal)) path.AddRect(new SKRect(at.X - 4, at.Y - 4, at.X + 4, at.Y + 4));
        else path.AddCircle(at.X, at.Y, r - 1.5f);
        canvas.DrawPath(path, fill);
        canvas.DrawPath(path, edge);
    }

    /// <summary>A label in a free place near its anchor with a leader where it stands off; false where there is no place.</summary>
    public static bool Label(Sheet sheet, Panel panel, SKPoint anchor, string text, bool bold = false)
    {
        if (panel.Labels.Near(anchor, Text.Size(text, bold)) is not { } place) return false;
        sheet.Over(canvas =>
        {
            var near = new SKPoint(Math.Clamp(anchor.X, place.Left, place.Right), Math.Clamp(anchor.Y, place.Top, place.Bottom));
            if (SKPoint.Distance(near, anchor) > 12) Line(canvas, anchor, near, Palette.Help, 0.8f);
            Text.Draw(canvas, text, place, Palette.Ink, bold);
        });
        return true;
    }

    /// <summary>Marks a list of events. Up to three of a kind each carry their word; of more the first that finds a place carries it for all, with their number. Releases are not marked.</summary>
    /// <param name="sheet">The picture.</param>
    /// <param name="panel">Where they lie.</param>
    /// <param name="events">Name and pixel of each.</param>
    /// <param name="once">True where one word a kind is enough, because several runs lie over each other.</param>
    public static void Events(Sheet sheet, Panel panel, IEnumerable<(string Name, SKPoint At)> events, bool once = false)
    {
        const int each = 3;
        var shown = events.Where(e => !EventWords.IsRelease(e.Name) && e.At.X >= panel.Data.Left && e.At.X <= panel.Data.Right).ToList();
        foreach (var (_, at) in shown) panel.Labels.Avoid(SKRect.Create(at.X - 6, at.Y - 6, 12, 12));
        foreach (var kind in shown.GroupBy(e => e.Name).OrderBy(k => EventWords.Rank(k.Key)))
        {
            string word = EventWords.Of(kind.Key);
            bool bold = EventWords.IsMetal(kind.Key);
            if (once)
            {
                _ = kind.Any(e => Label(sheet, panel, e.At, word, bold));
            }
            else if (kind.Count() <= each)
            {
                foreach (var (_, at) in kind) Label(sheet, panel, at, word, bold);
            }
            else
            {
                _ = kind.Any(e => Label(sheet, panel, e.At, $"{word}, {EventWords.Times(kind.Count())}", bold));
            }

        }

        foreach (var (name, at) in shown.OrderByDescending(e => EventWords.Rank(e.Name))) sheet.Over(canvas => Event(canvas, at, name)); // contacts on top
    }
}
