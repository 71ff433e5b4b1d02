using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Edits of a scenario's document: overrides from the command line, and load cases.</summary>
public static class Overrides
{
    /// <summary>The word that removes a key.</summary>
    public const string None = "none";

    /// <summary>The document with one PATH=VALUE applied; unchanged where a problem was noted.</summary>
    public static DocumentNode Set(DocumentNode root, string text, ProblemList problems)
    {
        var place = new Place("--set " + text, 0, 0);
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals <= 0)
        {
            problems.Note(place, "", Texts.Quote(text), Texts.PathAndValue);
            return root;
        }

        var path = text[..equals].Trim();
        var before = problems.Count;
        var value = YamlReader.Read(place.File, text[(equals + 1)..], problems, hasLines: false);
        if (problems.Count > before)
        {
            return root;
        }

        if (value is null)
        {
            problems.Note(place, path, Texts.Nothing, Texts.PathAndValue);
            return root;
        }

        return Put(root, path, path, value, problems);
    }

    /// <summary>The document with every override applied; a wrong one changes nothing and is left to the reader to note.</summary>
    public static DocumentNode Edited(DocumentNode root, IEnumerable<string> sets) => sets.Aggregate(root, (edited, set) => Set(edited, set, new ProblemList()));

    /// <summary>True where a value can stand at a path of this document; else noted: an item that its list does not have, a name where there is none.</summary>
    public static bool Fits(DocumentNode root, KnownPath known, string key, Place place, ProblemList problems) =>
        At(root, known, key, new ScalarNode(place, "", true), place, problems) is not null;

    /// <summary>The path of a PATH=VALUE.</summary>
    public static string PathOf(string text) => text.Split('=')[0].Trim();

    /// <summary>The document with a load case applied: new values, or changes where a sign leads.</summary>
    public static DocumentNode Case(DocumentNode root, string casePath, MapNode map, ProblemList problems)
    {
        foreach (var change in CaseBlock.Changes(map))
        {
            var key = casePath + "." + change.Name;
            var value = change.Value is ScalarNode { Quoted: false } scalar ? Changed(root, key, change, scalar, problems) : change.Value;
            root = value is null ? root : Put(root, key, change.Name, value, problems, change.Place);
        }

        return root;
    }

    private static DocumentNode Put(DocumentNode root, string key, string path, DocumentNode value, ProblemList problems, Place? at = null)
    {
        if (KeyPaths.Resolve(ScenarioKeys.Root, path, out var near) is not { } known)
        {
            problems.Note(at ?? value.Place, key, Texts.UnknownPath, near is not null ? Texts.Suggest(near) : Texts.KnownPathWanted);
            return root;
        }

        var removes = value is ScalarNode { Quoted: false, Text: None };
        return At(root, known, key, removes ? null : value, value.Place, problems) ?? root;
    }

    private static DocumentNode? At(DocumentNode root, KnownPath known, string key, DocumentNode? value, Place place, ProblemList problems)
    {
        var edited = root.With(known.Steps.AsSpan(), value, place, out var misfit);
        if (edited is null)
        {
            problems.Note(place, key, misfit is ListNode list ? Texts.NoSuchItem(list.Items.Length) : Texts.MisfitPath, Texts.KnownPathWanted);
        }

        return edited;
    }

    /// <summary>The new value that a case's text means: as it stands, behind '=', or present value plus change. Null where a problem was noted.</summary>
    private static ScalarNode? Changed(DocumentNode root, string key, MapEntry change, ScalarNode scalar, ProblemList problems)
    {
        if (scalar.Text.StartsWith('='))
        {
            return scalar with { Text = scalar.Text[1..].Trim() };
        }

        if (!(scalar.Text.StartsWith('+') || scalar.Text.StartsWith('-') || scalar.Text.StartsWith('\u2212'))
            || !Measured.TryParse(scalar.Text, out _)
            || KeyPaths.Resolve(ScenarioKeys.Root, change.Name, out _) is not { } known)
        {
            return scalar;
        }

        var node = root.Find(known.Steps.AsSpan());
        if (SideBlocks.KindOfNumber(known.Kind, node) is not { } kind)
        {
            problems.Note(scalar.Place, key, Texts.Quote(scalar.Text), Texts.ChangeableValue);
            return null;
        }

        return new QuantityReader(problems).Read(key, kind with { Range = ValueRange.Any }, scalar) is { } delta
            ? Sum(known, node, delta, key, scalar, problems)
            : null;
    }

    private static ScalarNode? Sum(KnownPath known, DocumentNode? node, Measured delta, string key, ScalarNode scalar, ProblemList problems)
    {
        if (((node as ScalarNode)?.Text ?? (node is null ? known.Default : null)) is not { } text || !Measured.TryParse(text, out var present))
        {
            problems.Note(scalar.Place, key, Texts.Quote(scalar.Text), Texts.PresentValue);
            return null;
        }

        // In the present value's own unit, so that 830 lbf + 120 lbf is 950 lbf to the last digit.
        var ratio = (delta.Unit?.Size ?? 1) / (present.Unit?.Size ?? 1);
        var sum = present.Number + (delta.UnitName == present.UnitName ? delta.Number : delta.Number * ratio);
        return scalar with { Text = Measured.Write(sum, present.UnitName) };
    }
}
