using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Selection;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Weighing;

/// <summary>Measured corners as read, SI.</summary>
/// <param name="Corners">In the order of the input, at least one.</param>
/// <param name="Errors">Of the measurement.</param>
/// <param name="Units">Output units.</param>
public sealed record MeasuredInput(ImmutableArray<MeasuredCorner> Corners, WeighErrors Errors, UnitSystem Units);

/// <summary>What came of a reading.</summary>
/// <param name="Input">Null where there are problems.</param>
/// <param name="Problems">Every mistake; empty where all is well.</param>
public sealed record MeasuredReading(MeasuredInput? Input, ImmutableArray<Problem> Problems);

/// <summary>Reads measured corners from a file or from flags.</summary>
public static class MeasuredReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">As given.</param>
    /// <param name="units">Output units; null for those of the first spring.</param>
    public static MeasuredReading ReadFile(string path, UnitSystem? units = null)
    {
        var problems = new ProblemList();
        return TextFiles.Read(path, path, MeasuredTexts.MeasuredFile, problems) is { } text ? ReadText(path, text, units) : new(null, problems.ToImmutable());
    }

    /// <summary>Reads a text.</summary>
    /// <param name="name">Named in every problem.</param>
    /// <param name="text">The document.</param>
    /// <param name="units">Output units; null for those of the first spring.</param>
    public static MeasuredReading ReadText(string name, string text, UnitSystem? units = null)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(name, text, problems);
        if (root is null or ScalarNode { IsNothing: true } && problems.Count == 0)
        {
            problems.Note(new Place(name, 0, 0), "", Texts.EmptyFile, MeasuredTexts.MeasuredFile);
            root = null;
        }

        return root is null ? new(null, problems.ToImmutable()) : Read(root, MeasuredKeys.File, units, problems);
    }

    /// <summary>Reads flags of the command line.</summary>
    /// <param name="given">Texts by the flag's name.</param>
    /// <param name="units">Output units; null for those of the first spring.</param>
    public static MeasuredReading ReadFlags(IReadOnlyDictionary<string, string> given, UnitSystem? units = null)
    {
        var read = Read(MeasuredFlags.Document(given), MeasuredKeys.Flags, units, new ProblemList());
        return read with { Problems = [.. read.Problems.Select(MeasuredFlags.Named)] };
    }

    private static MeasuredReading Read(DocumentNode root, MapKind table, UnitSystem? units, ProblemList problems)
    {
        root = PlainReadings(root);
        var v = ValueReader.Read(root, table, problems);
        MeasuredRules.Check(v, problems);
        if (problems.Count > 0)
        {
            return new(null, problems.ToImmutable());
        }

        var corners = Enumerable.Range(0, v.Count("corners")).Select(i => Corner(v, DataMaker.PathOf("corners", i)));
        return new(new([.. corners], new(v.Number("length_error"), v.Number("rate_error")), units ?? FirstUnit.Of(v.Node("corners")!)), []);
    }

    private static MeasuredCorner Corner(ReadValues v, string corner) => new(
        v.Text(corner + ".name"),
        [.. MeasuredKeys.Positions.Where(p => v.Has($"{corner}.{p}")).Select(p => Spring(v, p, $"{corner}.{p}"))],
        v.Text(corner + ".stop_nut_clear") == "true",
        v.NumberOrNull(corner + ".motion_ratio"),
        v.NumberOrNull(corner + ".shaft_showing"),
        v.NumberOrNull(corner + ".stroke"),
        v.Has(corner + ".gas") ? Gas(v, corner + ".gas") : null);

    private static MeasuredSpring Spring(ReadValues v, string position, string path) => new(
        position,
        v.Number(path + ".rate"),
        v.Number(path + ".free_length"),
        [.. Enumerable.Range(0, v.Count(path + ".loaded_length")).Select(i => v.Number(DataMaker.PathOf(path + ".loaded_length", i)))],
        v.NumberOrNull(path + ".solid_length"));

    private static GasData Gas(ReadValues v, string path) => new(
        v.Number(path + ".pressure"),
        v.Number(path + ".rod_diameter"),
        v.Number(path + ".volume"),
        v.Number(path + ".exponent"),
        v.Number(path + ".charge_temperature"),
        v.Number(path + ".temperature"));

    // One reading may stand without brackets: it becomes a list of one, so that the key table knows one kind only.
    private static DocumentNode PlainReadings(DocumentNode root)
    {
        if (root is not MapNode map || map.Find("corners") is not ListNode corners)
        {
            return root;
        }

        return map.With("corners", corners with { Items = [.. corners.Items.Select(c => MeasuredKeys.Positions.Aggregate(c, PlainReading))] });
    }

    private static DocumentNode PlainReading(DocumentNode corner, string position) =>
        corner is MapNode map && map.Find(position) is MapNode spring && spring.Find("loaded_length") is ScalarNode { IsNothing: false } reading
            ? map.With(position, spring.With("loaded_length", new ListNode(reading.Place, [reading])))
            : corner;
}
