using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Reports.Units;

namespace QuarterCar.Reports.SetupSheet;

/// <summary>The drawing of the sheet: the coilover to scale, fully extended and at ride height, with what is set by tape as lettered dimensions.</summary>
internal static class CoiloverDrawing
{
    /// <summary>mm.</summary>
    public const double Width = 98;

    // Lanes from the left: dimensions, extended coilover, dimensions, dimensions, coilover at ride height, labels (mm).
    private const double LeftCoilover = 30, RightCoilover = 71, MostHalf = 9, Top = 6, Lane = 3.2;

    /// <summary>SVG and what it is drawn at.</summary>
    /// <param name="subject">What the sheet is about.</param>
    /// <param name="height">mm on paper.</param>
    public static (string Svg, string Note) Of(SheetSubject subject, double height)
    {
        CoiloverData data = subject.Result.Scenario.Corner.Coilover;
        var sizes = PartSizes.Of(data);
        var extended = CoiloverShape.Extended(subject.Result, sizes);
        var ride = CoiloverShape.AtRideHeight(subject.Result, sizes);
        double above = Math.Max(subject.Result.Fit?.NutFromTop ?? 0, 0) + 2.5 * CoiloverPicture.Nut;
        double total = extended.CoilNut + above + 0.026 + CoiloverPicture.Foot, across = sizes.Inner + 2 * sizes.Wire;
        double scale = Math.Min((height - Top) / total, 2 * MostHalf / across), plate = height - CoiloverPicture.Foot * scale;
        var pen = new Pen();
        var left = new CoiloverPicture(pen, extended, sizes, scale, LeftCoilover, plate);
        var right = new CoiloverPicture(pen, ride, sizes, scale, RightCoilover, plate);
        left.Draw(data, above);
        right.Draw(data, above);
        pen.Text(LeftCoilover, 3.2, "middle", "fully extended", "strong");
        pen.Text(RightCoilover, 3.2, "middle", "at ride height", "strong");
        Dimensions(new DimensionLines(pen, subject.Units), subject, left, right, sizes);
        new PartLabels(pen, right, RightCoilover + right.Half).Draw(data, sizes);
        return (pen.Svg(Width, height, "The coilover fully extended and at ride height, to scale, with the dimensions to set"), Note(scale, sizes));
    }

    private static void Dimensions(DimensionLines lines, SheetSubject subject, CoiloverPicture left, CoiloverPicture right, PartSizes sizes)
    {
        var figures = subject.Result.Figures;
        double outside = LeftCoilover - left.Half - Lane, between = LeftCoilover + left.Half + Lane, inside = RightCoilover - right.Half - Lane;
        double free = sizes.StackFree(subject.Result.Scenario.Corner.Coilover.Springs);
        if (Math.Abs(figures.Preload) > 1e-9)
        {
            lines.Reach(LeftCoilover + left.Half + 1, left.Y(free), between + 0.8);
            lines.Reach(LeftCoilover + left.Half + 1, left.Y(left.Shape.CoilNut), between + 0.8);
            lines.Between(between, left.Y(free), left.Y(left.Shape.CoilNut), "A", "preload", figures.Preload, toLeft: false);
        }

        if (subject.NutToPlate is { } length)
            lines.Between(outside, left.Y(left.Shape.CoilNut), left.Y(0), "B", "nut to plate", length, toLeft: true);
        if (left.Shape.StopNut is { } stop)
            Gap(lines, between, LeftCoilover + left.Half, left.Y(stop), left.Y(left.Shape.Slider!.Value + sizes.Slider), "C", "gap", subject.StopNutDistanceExtended, toLeft: false);
        if (right.Shape.StopNut is { } nut)
            Gap(lines, inside, RightCoilover - right.Half, right.Y(nut), right.Y(right.Shape.Slider!.Value + sizes.Slider), "D", "gap", subject.StopNutDistanceRideHeight, toLeft: true);
        lines.Reach(RightCoilover - right.Half + 1, right.Y(right.Shape.Showing), inside - 0.8);
        lines.Between(inside, right.Y(right.Shape.Showing), right.Y(0), "E", "showing", figures.RideHeight, toLeft: true);
    }

    private static void Gap(DimensionLines lines, double x, double edge, double top, double bottom, string letter, string name, double? gap, bool toLeft)
    {
        lines.Reach(edge, top, x + (toLeft ? -0.8 : 0.8));
        lines.Reach(edge, bottom, x + (toLeft ? -0.8 : 0.8));
        lines.Between(x, top, bottom, letter, name, gap ?? 0, toLeft);
    }

    private static string Note(double scale, PartSizes sizes)
    {
        string ratio = (1000 / scale).ToString("0.0", CultureInfo.InvariantCulture);
        string assumed = sizes.Assumed.IsEmpty ? "" : $" Not given, drawn at a usual size: {string.Join(", ", sizes.Assumed)}.";
        return $"To scale, 1 : {ratio} where printed at 100 %.{assumed}";
    }
}

/// <summary>Dimension lines with arrows, and beside each its letter, its name and its length in both unit systems.</summary>
internal sealed class DimensionLines(Pen pen, BothUnits units)
{
    private const double LineHeight = 3.3, Outside = 4, HighestText = 7.4; // below the heads of the two pictures

    /// <summary>A thin line from a part out to a dimension.</summary>
    public void Reach(double from, double y, double to) => pen.Line(from, y, to, y, "hair");

    /// <summary>A dimension between two heights on paper.</summary>
    public void Between(double x, double top, double bottom, string letter, string name, double length, bool toLeft)
    {
        if (top > bottom) (top, bottom) = (bottom, top);
        bool narrow = bottom - top < 4.5; // arrows from outside, as on any drawing
        pen.Line(x, narrow ? top - Outside : top, x, narrow ? bottom + Outside : bottom, "dim");
        pen.Head(x, top, down: narrow);
        pen.Head(x, bottom, down: !narrow);
        double at = Math.Max((top + bottom) / 2 - 1.5 * LineHeight + 1, HighestText), text = toLeft ? x - 1.6 : x + 1.6;
        string anchor = toLeft ? "end" : "start";
        (string first, string second) = units.Pair(Dimension.Length, length);
        pen.Text(text, at, anchor, letter, "letter");
        pen.Text(text, at + LineHeight, anchor, name);
        pen.Text(text, at + 2 * LineHeight, anchor, first, "strong");
        pen.Text(text, at + 3 * LineHeight, anchor, second);
    }
}
