using System.Collections.Immutable;

using QuarterCar.Model.Selection;
using QuarterCar.Reports.Units;
using QuarterCar.Scenarios;

namespace QuarterCar.Reports.Words;

/// <summary>What `weigh` prints: the loads, what decides them, figures and springs a corner, left against right, warnings, cautions.</summary>
public static class WeighText
{
    private const string Measuring =
        "Measure on level ground with the wheels chocked, springs settled. Under a raised vehicle use rated stands, never a jack alone; nobody is under it, and no hand is near "
        + "the coils, while it settles. Stay out of a compressed spring's line. A spring that is unmarked or used has its rate measured first.";

    /// <summary>Writes it.</summary>
    /// <param name="result">What was weighed.</param>
    /// <param name="units">Output units.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public static void Write(WeighResult result, UnitSystem units, TextWriter writer, bool colour = false)
    {
        var read = new Readable(units);
        var page = new TextPage(writer, colour);
        foreach (var corner in result.Corners) page.Paragraph(WeighVerdict.Of(corner, read), "bold");
        foreach (var corner in result.Corners)
        {
            Loads(page, corner, read);
            if (corner.Instead is null && corner.Loads.Uncertainty > 0) page.Gap().Paragraph(WeighVerdict.Decides(corner, result.Errors, read));
            Springs(page, corner, read);
        }

        Sides(page, result.Differences, read);
        page.Warnings([.. result.Corners.SelectMany(c => WeighWarnings.Of(c, result.Errors, units).Select(w => Named(w, c.Measured.Name)))]);
        foreach (string remark in Remarks(result.Corners)) page.Gap().Paragraph(remark);
        page.Gap().Paragraph(Measuring).Gap().Paragraph(Cautions.Springs).Flush();
    }

    private static void Loads(TextPage page, WeighedCorner corner, Readable read)
    {
        CornerLoads loads = corner.Answer;
        double? ratio = corner.Measured.MotionRatio;
        string unit = read.Unit(Dimension.Force).Name;
        string[] Line(string words, double? force, double? halfWidth) =>
            [words, read.Number(Dimension.Force, force), halfWidth is null ? "" : "± " + read.Number(Dimension.Force, halfWidth), force is null ? "" : unit];
        string heading = corner.Measured.Name ?? "Loads";
        page.Rows(
            corner.Cause switch { _ when corner.Instead is null => heading, DisagreementCause.SliderOnStopNut => heading + ", if the slider is on the stop nut", _ => heading + ", if the tender is solid" },
            [
                Line("Load on the springs", loads.SpringLoad, loads.Uncertainty),
                Line("Gas force, standing", corner.GasForce, null),
                Line(corner.GasForce is null ? "Load on the coilover, gas not counted" : "Load on the coilover", loads.CoiloverLoad, loads.Uncertainty),
                Line("Sprung weight at the wheel", loads.SprungWeight, ratio * loads.Uncertainty),
                Line("Friction, half of settled from above less below", corner.Friction, null),
            ],
            [1, 2]);
    }

    private static void Springs(TextPage page, WeighedCorner corner, Readable read)
    {
        string force = read.Unit(Dimension.Force).Name;
        page.Rows(
            corner.Measured.Name is { } name ? $"Springs, {name}" : "Springs",
            [
                .. corner.Springs.Select(s => new[]
                {
                    s.Spring.Position, read.Number(Dimension.Length, s.Spring.Compression), read.Number(Dimension.Force, s.Spring.Load), read.Number(Dimension.Force, s.Uncertainty), Use(s.Use),
                }),
            ],
            [1, 2, 3],
            ["", $"compression, {read.Unit(Dimension.Length).Name}", $"load, {force}", $"±, {force}", ""]);
    }

    private static string Use(SpringUse use) => use switch
    {
        SpringUse.PastStopNut => "left out: on the stop nut",
        SpringUse.Solid => "left out: solid",
        _ => "",
    };

    private static void Sides(TextPage page, ImmutableArray<SideDifference> differences, Readable read)
    {
        if (differences.IsEmpty) return;
        string force = read.Unit(Dimension.Force).Name;
        page.Rows(
            $"Left less right, load on the springs ({force})",
            [
                .. differences.Select(d => d.Difference is not null
                    ? new[] { WeighVerdict.Side(d, read), read.Number(Dimension.Force, d.Difference), "± " + read.Number(Dimension.Force, d.Uncertainty) }
                    : [WeighVerdict.Side(d, read), Readable.None, ""]),
            ],
            [1]);
    }

    private static Warning Named(Warning warning, string? name) => name is null ? warning : warning with { Message = $"{name}: {warning.Message}" };

    /// <summary>What is not in the loads, and what would bring it in.</summary>
    private static IEnumerable<string> Remarks(ImmutableArray<WeighedCorner> corners)
    {
        if (corners.Any(c => c.GasForce is null))
            yield return "Gas is not counted where it is not given: for a charged shock give pressure, volume and rod diameter with shaft showing and stroke.";
        if (corners.Any(c => c.Friction is null && !ReadTwice(c)))
            yield return "Friction is not known from one reading: settle the vehicle once from below and once from above, and give both loaded lengths.";
        foreach (WeighedCorner corner in corners.Where(c => c.Friction is null && ReadTwice(c)))
            yield return FrictionLeftOut(corner);
        if (corners.Any(c => c.GasForce is not null || c.Measured.MotionRatio is not null))
            yield return "The uncertainty is that of the springs: errors of gas and motion ratio are not in it.";
    }

    private static bool ReadTwice(WeighedCorner corner) => corner.Measured.Springs.Any(s => s.HalfStep is not null);

    // The springs that were read both ways are those that the load does not go by.
    private static string FrictionLeftOut(WeighedCorner corner)
    {
        string place = corner.Measured.Name is { } name ? $" at {name}" : "";
        return !corner.Measured.StopNutClear || corner.Cause == DisagreementCause.SliderOnStopNut
            ? $"Friction is not known{place}: the slider is taken to rest on the stop nut, and then only the lower spring tells of it. Read the lower spring both ways too, settled from below and from above."
            : $"Friction is not known{place}: the tender is taken to be solid, and then only the other springs tell of it. Read them both ways too, settled from below and from above.";
    }
}
