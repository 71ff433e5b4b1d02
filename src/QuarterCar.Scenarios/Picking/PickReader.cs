using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.SpringLists;

namespace QuarterCar.Scenarios.Picking;

/// <summary>Reads what `pick` is asked from flags and lists, and notes every mistake.</summary>
public sealed class PickReader
{
    private readonly ProblemList _problems = new();
    private readonly Dictionary<string, Measured> _values = new(StringComparer.Ordinal);
    private readonly IReadOnlyDictionary<string, string> _given;

    private PickReader(IReadOnlyDictionary<string, string> given) => _given = given;

    /// <summary>Reads it.</summary>
    /// <param name="given">Texts by the flag's name.</param>
    /// <param name="springs">A list's file; null for the one that ships.</param>
    /// <param name="tenders">A list's file; null for none.</param>
    /// <param name="units">Output units; null for those of the load.</param>
    public static PickReading Read(IReadOnlyDictionary<string, string> given, string? springs, string? tenders, UnitSystem? units = null)
    {
        var reader = new PickReader(given);
        var input = reader.Input(springs, tenders, units);
        return reader._problems.Count > 0 ? new(null, reader._problems.ToImmutable()) : new(input, []);
    }

    private PickInput? Input(string? springs, string? tenders, UnitSystem? units)
    {
        foreach (var flag in PickFlags.All)
        {
            Value(flag);
        }

        var rules = new PickRules(_values, _problems);
        rules.Check(_given);
        var inner = InventedSprings.InnerFor(Si(PickFlags.Diameter));
        bool invented = IsInvented(springs ?? InventedSprings.Name), inventedTenders = tenders is not null && IsInvented(tenders);
        var list = invented ? InventedSprings.Springs().OfInnerDiameter(inner) : SpringListReader.Read(springs!, _problems);
        var soft = tenders is null ? null : inventedTenders ? InventedSprings.Tenders().OfInnerDiameter(inner) : SpringListReader.Read(tenders, _problems);
        if (_problems.Count > 0 || list is null)
        {
            return null;
        }

        var data = new PickData(Si(PickFlags.Load)!.Value, Si(PickFlags.Stroke)!.Value, Si(PickFlags.RideHeight)!.Value, list.Springs)
        {
            Tenders = soft?.Springs ?? [],
            Preload = Si(PickFlags.Preload) ?? PickData.DefaultPreload,
            Gap = Si(PickFlags.Gap),
            Gas = rules.Gas(),
            Body = Body(),
        };
        rules.Count(data, list.File);
        return new(data, list, soft, invented || inventedTenders, units ?? _values[PickFlags.Load].Unit!.System ?? UnitSystem.Si);
    }

    // A file of that name is meant where there is one.
    private static bool IsInvented(string list) => list == InventedSprings.Name && !File.Exists(list);

    private void Value(PickFlag flag)
    {
        if (!_given.TryGetValue(flag.Name, out var text))
        {
            if (flag.Required)
            {
                _problems.Note(new Place(flag.Name, 0, 0), "", Texts.Nothing, KindTexts.Wanted(flag.Kind));
            }

            return;
        }

        var place = new Place(flag.Name, 0, 0);
        if (new QuantityReader(_problems).Read("", flag.Kind, new ScalarNode(place, text, Quoted: true)) is { } measured)
        {
            _values.Add(flag.Name, measured);
        }
    }

    private double? Si(string flag) => _values.TryGetValue(flag, out var m) ? m.Si : null;

    private BodyData? Body()
    {
        var body = new BodyData(Si(PickFlags.Seat), Si(PickFlags.Thread), null, Si(PickFlags.Slider), Si(PickFlags.Diameter));
        return body is { SeatLength: null, Thread: null, Slider: null, Diameter: null } ? null : body;
    }
}
