using System.Collections.Immutable;
using System.Text.RegularExpressions;

using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Reading;

/// <summary>
/// Makes scenarios that differ in single numbers at the same paths from one that was read: the numbers are set among the values that were read, the
/// rules between keys are held again, the rest is shared. Gives the same bits as reading the whole document with these overrides, at a small part of its time.
/// Whatever is not plainly a right number is left to that reading, which alone knows the words for mistakes. Immutable; safe to ask from many threads.
/// </summary>
public sealed partial class NumberTemplate
{
    private readonly ScenarioContent _content;
    private readonly Scenario _scenario;
    private readonly DocumentNode _root;
    private readonly ImmutableArray<Slot> _slots;

    // Of each tolerance: the path of the value that it is about where that is set, else null.
    private readonly ImmutableArray<string?> _tolerances;
    private readonly bool _corner, _excitation, _run;

    private NumberTemplate(ScenarioContent content, Scenario scenario, DocumentNode root, ImmutableArray<Slot> slots)
    {
        (_content, _scenario, _root, _slots) = (content with { Values = content.Values.Indexed() }, scenario, root, slots);
        _tolerances = [.. content.Tolerances.Select(t => CanonicalPath(t.Path) is { } path && slots.Any(s => s.Path == path) ? path : null)];
        _corner = Touches("corner", "tyre", "coilover");
        _excitation = Touches("terrain", "speed", "drop");
        _run = Touches("run");
    }

    /// <summary>Where a number goes.</summary>
    /// <param name="Path">As the values are named.</param>
    /// <param name="Kind">What may stand there.</param>
    /// <param name="Place">Of the override.</param>
    /// <param name="IsTable">True where the plain number stands for a table.</param>
    private sealed record Slot(string Path, QuantityKind Kind, Place Place, bool IsTable);

    /// <summary>The template of one reading; null where it was no success, or where a path holds no single number.</summary>
    /// <param name="document">The document.</param>
    /// <param name="options">As for the reading, its overrides among them; the stop-nut rule must be <see cref="NutRule.Reset"/>, and no case may come after the overrides.</param>
    /// <param name="count">How many of the overrides, the last ones, are the numbers that differ.</param>
    public static NumberTemplate? Of(ScenarioDocument document, ReadOptions options, int count)
    {
        var (result, content, root) = ScenarioReader.ReadWithContent(document, options);
        if (result.Scenario is not { } scenario || content is null || options.Nut != NutRule.Reset || options.CaseComesLast)
        {
            return null;
        }

        var slots = options.Sets.TakeLast(count).Select(set => SlotOf(set, content, root)).OfType<Slot>().ToImmutableArray();
        return slots.Length == count ? new NumberTemplate(content, scenario, root, slots) : null;
    }

    /// <summary>The scenario with these numbers, its hash left empty; null where the whole document has to be read for them.</summary>
    /// <param name="texts">The numbers as written, one a path in the order of the overrides.</param>
    public Scenario? With(ReadOnlySpan<string> texts)
    {
        var problems = new ProblemList();
        var set = ImmutableArray.CreateBuilder<KeyValuePair<string, ReadValue>>(texts.Length);
        for (var i = 0; i < texts.Length; i++)
        {
            if (!Plain().IsMatch(texts[i]) || Value(_slots[i], texts[i], problems) is not { } value)
            {
                return null;
            }

            set.Add(KeyValuePair.Create(_slots[i].Path, value));
        }

        var values = _content.Values.With(set.MoveToImmutable());
        CrossRules.Check(values, _root, problems);
        if (problems.Count > 0)
        {
            return null;
        }

        var excitation = _excitation ? DataMaker.Excitation(values, _content.Profiles) : _content.Excitation;
        TraceRows.Check(values, excitation, problems);
        return problems.Count > 0 ? null : _scenario with
        {
            Hash = "",
            Corner = _corner ? DataMaker.Corner(values) : _content.Corner,
            Excitation = excitation,
            Run = _run ? DataMaker.Run(values) : _scenario.Run,
            Tolerances = Tolerances(values),
        };
    }

    private static Slot? SlotOf(string set, ScenarioContent content, DocumentNode root)
    {
        if (KeyPaths.Resolve(ScenarioKeys.Root, Overrides.PathOf(set), out _) is not { } known)
        {
            return null;
        }

        var path = DocumentPath.Write(known.Steps);
        var node = root.Find(known.Steps.AsSpan());
        return SideBlocks.KindOfNumber(known.Kind, node) is { } kind && node is ScalarNode && content.Values.Find(path) is NumberValue or TableValue
            ? new Slot(path, kind, node.Place, known.Kind is TableKind)
            : null;
    }

    private static ReadValue? Value(Slot slot, string text, ProblemList problems)
    {
        var node = new ScalarNode(slot.Place, text, Quoted: false);
        return new QuantityReader(problems).Read(slot.Path, slot.Kind, node) is not { } measured ? null
            : slot.IsTable ? new TableValue(node, [new(0, measured.Si)])
            : new NumberValue(node, measured);
    }

    // A tolerance tells the value that it is about.
    private ImmutableArray<Tolerance> Tolerances(ReadValues values) => _tolerances.All(p => p is null)
        ? _content.Tolerances
        : [.. _content.Tolerances.Select((t, i) => _tolerances[i] is { } path ? t with { Value = Si(values.Find(path)) } : t)];

    private static double Si(ReadValue? value) => value is TableValue table ? table.Points[0].Value : ((NumberValue)value!).Measured.Si;

    private static string? CanonicalPath(string path) => KeyPaths.Resolve(ScenarioKeys.Root, path, out _) is { } known ? DocumentPath.Write(known.Steps) : null;

    private bool Touches(params string[] blocks) => _slots.Any(s => blocks.Any(b => s.Path == b || s.Path.StartsWith(b + ".", StringComparison.Ordinal) || s.Path.StartsWith(b + "[", StringComparison.Ordinal)));

    /// <summary>A number and a unit that mean the same to a reader of YAML as they stand: no sign, quote or comment of its own.</summary>
    [GeneratedRegex(@"^[+-]?[0-9.][0-9.eE+-]*( ?[A-Za-z%][A-Za-z0-9/*^]*)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();
}
