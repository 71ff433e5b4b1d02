using System.Collections.Immutable;

using QuarterCar.Model.Terrain;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;
using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots.Compare;

/// <summary>Which setup uses how much of the stroke, and where on the ground? Shaft showing of every setup over distance, the ground below.</summary>
internal static class CompareShaftPlot
{
    private const float Left = 66, Right = Sheet.Width - 168;

    /// <summary>Draws it.</summary>
    public static Sheet Draw(ImmutableArray<DrawnSetup> setups, Readable read)
    {
        DrawnSetup first = setups[0], widest = setups.MaxBy(s => s.Samples.PlaceRange.To)!;
        string other = Other(setups, widest);
        string note = $"Shaft showing; full bump is at the bottom. Bands and heights at the right are those of {first.Mark}." + other + first.Samples.CropNote;
        string under = other.Length > 0 ? "Not the same obstacle under every setup"
            : setups.All(s => Obstacle.IsSame(s.Samples.Run.Scenario.Excitation, first.Samples.Run.Scenario.Excitation)) ? "The same obstacle under every setup"
            : first.Samples.Run.Scenario.Excitation is Drop ? "Not the same drop under every setup"
            : "The same ground under every setup, not at the same speed";
        var sheet = new Sheet("shaft_travel", Title(setups, read), note) { Caption = under + ": the lower a line dips, the nearer it comes to full bump." };
        double perSi = read.Unit(Dimension.Length).PerSi, stroke = setups.Max(s => s.Samples.Run.Scenario.Corner.Coilover.Stroke);
        double low = Math.Min(0, setups.Min(s => s.Samples.Shown.Min(p => p.ShaftShowing))), high = Math.Max(stroke, setups.Max(s => s.Samples.Shown.Max(p => p.ShaftShowing)));
        float top = SetupStyles.Key(sheet, setups, Left, sheet.Top + 6);
        var panel = sheet.Add(new Panel(
            new SKRect(Left, top, Right, top + 336), widest.Samples.PlaceRange, ((low - (0.055 * stroke)) * perSi, (high + (0.055 * stroke)) * perSi)));
        panel.Plot.Axes.Left.Label.Text = "shaft showing, " + read.Unit(Dimension.Length).Name;
        AxisLabels.Style(panel);
        var zones = StrokeZones.Of(first.Samples.Run.Standing);
        ZoneBands.Upright(sheet, panel, zones, read);
        foreach (DrawnSetup setup in setups.Reverse())
            panel.Line(Decimate.Series(panel.Pixels(setup.Samples.Shown.Select(s => (setup.Samples.Place(s), s.ShaftShowing * perSi)))), setup.Color, 2, setup.Pattern);
        foreach (DrawnSetup setup in setups) Deepest(sheet, panel, setup, read);
        Marks.Events(sheet, panel, setups.SelectMany(setup => setup.Samples.Run.Events.Select(e => (e.Event, Showing(panel, setup, e.Time, e.Distance, e.ShaftTravel, perSi)))), once: true);
        ZoneBands.Names(sheet, panel, zones, read);
        Below(sheet, panel, widest.Samples);
        return sheet;
    }

    // Whose ground is drawn below, and whose is another; beside a drop, why there is none. Empty where all have the same.
    private static string Other(ImmutableArray<DrawnSetup> setups, DrawnSetup below)
    {
        ImmutableArray<TerrainPiece>? Ground(DrawnSetup s) => (s.Samples.Run.Scenario.Excitation as Course)?.Pieces;
        string[] drops = [.. setups.Where(s => Ground(s) is null).Select(s => s.Mark)];
        if (drops.Length == setups.Length) return "";
        if (drops.Length > 0) return $" {string.Join(", ", drops)} {(drops.Length == 1 ? "is a drop" : "are drops")} and {(drops.Length == 1 ? "has" : "have")} no distance: all are drawn over time.";
        string[] others = [.. setups.Where(s => !Obstacle.IsSame(Ground(s)!.Value, Ground(below)!.Value)).Select(s => s.Mark)];
        return others.Length == 0 ? "" : $" The ground below is {below.Mark}'s; {string.Join(", ", others)} {(others.Length == 1 ? "drives" : "drive")} another.";
    }

    private static string Title(ImmutableArray<DrawnSetup> setups, Readable read)
    {
        static double Left(DrawnSetup s) => s.Samples.Run.Scenario.Corner.Coilover.Stroke - s.Samples.Run.Figures.Travel.MaxShaftTravel;
        DrawnSetup deep = setups.MinBy(Left)!, shallow = setups.MaxBy(Left)!;
        string Words(DrawnSetup s) => Left(s) < 0 ? "goes into metal" : $"goes to {read.Text(Dimension.Length, Left(s))} showing";
        // By what is shown: a difference that nobody can see makes none the deepest.
        if (setups.Length > 1 && setups.All(s => Words(s) == Words(deep)))
            return Left(deep) < 0 ? "All go into metal" : $"All go to {read.Text(Dimension.Length, Left(deep))} showing";
        return deep == shallow ? $"{deep.Mark} {Words(deep)}" : $"{deep.Mark} goes deepest: it {Words(deep)}; {shallow.Mark} keeps most: it {Words(shallow)}";
    }

    private static void Deepest(Sheet sheet, Panel panel, DrawnSetup setup, Readable read)
    {
        var run = setup.Samples.Run;
        var deepest = setup.Samples.Shown.MinBy(s => s.ShaftShowing);
        double showing = run.Scenario.Corner.Coilover.Stroke - run.Figures.Travel.MaxShaftTravel;
        var at = new SKPoint(panel.X(setup.Samples.Place(deepest)), panel.Y(showing * read.Unit(Dimension.Length).PerSi));
        Marks.Label(sheet, panel, at, $"{setup.Mark}, {read.Text(Dimension.Length, showing)}", bold: true);
    }

    private static SKPoint Showing(Panel panel, DrawnSetup setup, double time, double distance, double travel, double perSi) =>
        new(panel.X(setup.Samples.Place(time, distance)), panel.Y((setup.Samples.Run.Scenario.Corner.Coilover.Stroke - travel) * perSi));

    private static void Below(Sheet sheet, Panel above, RunSamples samples)
    {
        if (!samples.OverDistance)
        {
            above.Plot.Axes.Bottom.Label.Text = samples.PlaceLabel;
            AxisLabels.Style(above);
            sheet.Height = above.Data.Bottom + 52;
            return;
        }

        Panel.Ticks(above.Plot.Axes.Bottom, _ => "");
        var ground = GroundPanel.Add(sheet, samples, above.Data.Bottom + 22, Left, Right);
        sheet.Height = ground.Data.Bottom + 52;
    }
}
