using System.Collections.Immutable;

using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Writing;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Load cases: finds them in a document, names them, and holds each against the scenario that it changes.</summary>
public static class CaseBlock
{
    /// <summary>The key that names a case.</summary>
    public const string NameKey = "name";

    /// <summary>The cases as written; names checked, changes not.</summary>
    public static ImmutableArray<LoadCase> Read(DocumentNode root, ProblemList problems)
    {
        var cases = ImmutableArray.CreateBuilder<LoadCase>();
        foreach (var (path, map) in Maps(root))
        {
            if (map.Find(NameKey) is not ScalarNode { IsNothing: false, Text: { Length: > 0 } name } node)
            {
                problems.Note(map.Place, path + "." + NameKey, map.Find(NameKey) is { } other ? KindTexts.AsFound(other) : Texts.Nothing, Texts.CaseName);
                continue;
            }

            if (!ValueReader.IsShortLine(name))
            {
                problems.Note(node.Place, path + "." + NameKey, Texts.Quote(name), Texts.PlainCaseName);
            }

            if (cases.Any(c => c.Name == name))
            {
                problems.Note(node.Place, path + "." + NameKey, Texts.Quote(name), Texts.OtherName);
            }

            cases.Add(new LoadCase(name, [.. Changes(map).Select(e => KeyValuePair.Create(e.Name, Written(e.Value)))]));
        }

        return cases.ToImmutable();
    }

    // What stands in quotes stays in quotes where that makes a difference: a sign in them is no change, and a comma in them parts nothing.
    private static string Written(DocumentNode value) => value is ScalarNode s && !(s.Quoted && s.Text is ['+' or '-', ..]) ? s.Text : FlowText.Of(value);

    /// <summary>The case of a name and its path; null where there is none.</summary>
    public static (string Path, MapNode Map)? Find(DocumentNode root, string name)
    {
        foreach (var found in Maps(root))
        {
            if (found.Map.Find(NameKey) is ScalarNode scalar && scalar.Text == name)
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>The document with each of its cases, one at a time; what is wrong with them is left to <see cref="Check"/>.</summary>
    public static IEnumerable<DocumentNode> Applied(DocumentNode root) => Maps(root).Select(c => Overrides.Case(root, c.Path, c.Map, new ProblemList()));

    /// <summary>A case's changes: every key but its name.</summary>
    public static IEnumerable<MapEntry> Changes(MapNode map) => map.Entries.Where(e => e.Name != NameKey);

    /// <summary>What each case would break that the scenario alone does not, at the case's own lines.</summary>
    /// <param name="root">The scenario as written; a spring load in it counts as a sprung weight for the changes.</param>
    /// <param name="read">Reads a document and notes its mistakes.</param>
    /// <param name="problems">Takes the mistakes.</param>
    public static void Check(DocumentNode root, Action<DocumentNode, ProblemList> read, ProblemList problems)
    {
        if (!Maps(root).Any())
        {
            return;
        }

        var weighed = SpringLoads.AsWeight(root);
        HashSet<Problem> known = [.. Mistakes(root, read), .. Mistakes(weighed, read)];
        foreach (var (path, map) in Maps(root))
        {
            var own = new ProblemList();
            var changesLoad = Changes(map).Any(e => e.Name is SpringLoads.Path or "corner");
            var changed = Overrides.Case(changesLoad ? root : weighed, path, map, own);
            foreach (var problem in own.ToImmutable())
            {
                problems.Note(problem);
            }

            foreach (var problem in Mistakes(changed, read).Where(p => !known.Contains(p)))
            {
                var line = Changes(map).Any(e => e.Value.Place.Line == problem.Line) ? problem.Line : map.Place.Line;
                problems.Note(problem with { Line = line, Key = path + "." + problem.Key });
            }
        }
    }

    private static ImmutableArray<Problem> Mistakes(DocumentNode root, Action<DocumentNode, ProblemList> read)
    {
        var problems = new ProblemList();
        read(root, problems);
        return problems.ToImmutable();
    }

    private static IEnumerable<(string Path, MapNode Map)> Maps(DocumentNode root)
    {
        if ((root as MapNode)?.Find("cases") is not ListNode { Items.Length: <= ScenarioKeys.MostCases } list)
        {
            yield break;
        }

        for (var i = 0; i < list.Items.Length; i++)
        {
            if (list.Items[i] is MapNode map)
            {
                yield return (DataMaker.PathOf("cases", i), map);
            }
        }
    }
}
