using System.Text.Json;

using QuarterCar.Model;
using QuarterCar.Model.Motion;
using QuarterCar.Reports.Units;
using QuarterCar.Reports.Words;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Studies;
using QuarterCar.Studies.Setups;
using QuarterCar.Web.Form;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Answers;

/// <summary>How much does this matter: one input a few steps to either side, one figure over it.</summary>
internal sealed class MatterAnswer(Library library)
{
    private const int Side = 7;

    /// <summary>Works it out and writes it.</summary>
    public void Write(Stream stream, MatterRequest request, CancellationToken cancel)
    {
        UnitSystem units = UnitWords.Of(request.Units) ?? UnitWords.Own(library, request.Setup);
        ReadSetup read = library.Read(request.Setup, units);
        using var json = new Utf8JsonWriter(stream);
        json.WriteStartObject();
        if (Objection(read, request) is { } objection) json.WriteString("problem", objection);
        else Answer(json, read, request, units, cancel);
        json.WriteEndObject();
    }

    private void Answer(Utf8JsonWriter json, ReadSetup read, MatterRequest request, UnitSystem units, CancellationToken cancel)
    {
        try
        {
            Sweep(json, read, request, units, cancel);
        }
        catch (CornerException e)
        {
            json.WriteString("problem", $"Found {e.Found}; wanted {e.Wanted}.");
        }
    }

    private static string? Objection(ReadSetup read, MatterRequest request) =>
        read.Scenario is not { } scenario ? "Correct the mistakes first."
        : PageLimits.Of(scenario) is { } much ? $"Found {much.Found}; wanted {much.Wanted}."
        : !FigureNames.All.Contains(request.Figure) ? "There is no such figure."
        : Present(read, request.Path) is null ? "This input has no number to change."
        : null;

    private void Sweep(Utf8JsonWriter json, ReadSetup read, MatterRequest request, UnitSystem units, CancellationToken cancel)
    {
        (Measured present, QuantityKind kind) = Present(read, request.Path)!.Value;
        string unit = ShownUnit(present, units);
        double step = StepSizes.Of(request.Path, kind.Dimension, units, StepSizes.Pitch(read.Edited!));
        double[] at = [.. Enumerable.Range(-Side, (2 * Side) + 1).Select(i => present.Si + (i * step)).Where(kind.Range.Holds)];
        var (dimension, toSi) = Readable.OfKey(request.Figure);
        ReadableUnit figure = request.Figure.StartsWith("counts.", StringComparison.Ordinal) ? new("", 1, 0) : new Readable(units).Unit(dimension);
        if (IsSetByHold(request, [.. at.Where(v => v != present.Si).Select(v => ShownUnits.In(v, unit))], cancel))
        {
            json.WriteString("problem", "What is held sets this input, so that nothing else can be seen to follow from it: hold nothing, or something else.");
            return;
        }

        StudyRow[] rows = Rows(read, request, at, present, units, cancel);
        int place = FigureTable.Names.IndexOf(request.Figure);
        json.WriteString("unit", unit);
        json.WriteString("input", FieldWords.Of(request.Path));
        json.WriteString("figure", FigureWords.OfName(request.Figure, null, new Readable(units)).Words);
        json.WriteString("figureUnit", figure.Name);
        json.WriteString("held", request.Hold switch { "nut" => ", the stop nut held on the body", "ride_height" => ", the ride height held", "crossover" => ", ride height and crossover held", _ => "" });
        json.Short("now", In(present.Si, unit));
        json.Line("points", rows.Where(r => r.Figures?[place] is not null).Select(r => (In(r.Request.Values[0].Si!.Value, unit), r.Figures!.Value[place]!.Value * toSi * figure.PerSi)));
        json.Numbers("touches", rows.Where(r => r.MeetsMetal).Select(r => In(r.Request.Values[0].Si!.Value, unit)));
        json.WriteString("leftOut", rows.FirstOrDefault(r => r.Figures is null) is { } bad ? $"Left out where the corner cannot be: {bad.Request.Title}: {bad.Note}." : "");
    }

    // Each row is what the page would show with that value typed in: load case, stop nut and what is held follow its own rules.
    private StudyRow[] Rows(ReadSetup read, MatterRequest request, double[] at, Measured present, UnitSystem units, CancellationToken cancel)
    {
        string unit = ShownUnit(present, units);
        var study = new StudyBase(read.Document!, Library.Options(request.Setup, units), read.Scenario!);
        var rows = new List<StudyRow>();
        StudyEngine.Rows(at.Length, StudyOptions.Default, Row, rows.Add, null, cancel);
        return [.. rows];

        StudyRow Row(long index, MotionRun run, bool keepRun)
        {
            var value = new SetupValue(request.Path, ShownUnits.In(at[index], unit), at[index]);
            var asked = SetupRequest.Of([value]);
            try
            {
                ReadSetup there = at[index] == present.Si ? read : library.Read(Held(request, Changes.With(request.Setup, value.Path, value.Text), cancel), units);
                return there.Scenario is { } scenario
                    ? StudyEngine.One(study, new Setup(asked, scenario, null, ""), index, run, keepRun, cancel)
                    : new StudyRow(index, asked, null, string.Join("; ", there.Problems.Select(p => $"{p.Key}: found {p.Found}; wanted {p.Wanted}")), null, null);
            }
            catch (CornerException e)
            {
                return new StudyRow(index, asked, null, $"found {e.Found}; wanted {e.Wanted}", null, null);
            }
        }
    }

    private bool IsSetByHold(MatterRequest request, string[] values, CancellationToken cancel)
    {
        foreach (string value in values)
        {
            try
            {
                SetupState typed = Changes.With(request.Setup, request.Path, value);
                return Holds.GivenWay(typed, Held(request, typed, cancel), request.Path) is not null;
            }
            catch (CornerException)
            {
                // This value cannot be held; the next one says as much about the path.
            }
        }

        return false;
    }

    private SetupState Held(MatterRequest request, SetupState setup, CancellationToken cancel) => Holds.Apply(library, setup, request.Hold, [.. request.Base ?? []], cancel);

    private static string ShownUnit(Measured present, UnitSystem units) => present.Unit is null ? "" : ShownUnits.Of(present.Unit.Name, units);

    private static double In(double si, string unit) => Scenarios.Quantities.UnitTable.Find(unit) is { } u ? u.FromSi(si) : si;

    private static (Measured Present, QuantityKind Kind)? Present(ReadSetup read, string path) =>
        read.Edited is { } root && KeyPaths.Resolve(ScenarioKeys.Root, path, out _) is { } known ? PresentNumber.Of(known, root.Find(known.Steps.AsSpan())) : null;
}
