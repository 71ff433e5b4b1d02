using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Reading;

/// <summary>
/// Reads a document against a key table: every unknown, missing, mistyped or out-of-range value is noted, and the reading goes on. Knows no key by name.
/// </summary>
public sealed class ValueReader
{
    private readonly MapKind _table;
    private readonly ProblemList _problems;
    private readonly ImmutableSortedDictionary<string, ReadValue>.Builder _values =
        ImmutableSortedDictionary.CreateBuilder<string, ReadValue>(StringComparer.Ordinal);

    private ValueReader(MapKind table, ProblemList problems) => (_table, _problems) = (table, problems);

    /// <summary>Reads a whole document.</summary>
    public static ReadValues Read(DocumentNode root, MapKind table, ProblemList problems)
    {
        var reader = new ValueReader(table, problems);
        reader.Map("", table, root);
        return new ReadValues(reader._values.ToImmutable());
    }

    /// <summary>Longest text that fits a title line.</summary>
    public const int LongestText = 200;

    /// <summary>True for what may stand as a title or a name: a line of plain text, not too long.</summary>
    public static bool IsShortLine(string text) => text.Length <= LongestText && PlainText.IsLine(text);

    private void Value(string path, Key key, DocumentNode node)
    {
        switch (key.Kind)
        {
            case var _ when node is BrokenNode:
                break;
            case var kind when node is ScalarNode { IsNothing: true }:
                _problems.Note(node.Place, path, Texts.Nothing, KindTexts.Wanted(kind));
                break;
            case MapKind map:
                Map(path, map, node);
                break;
            case OneOfKind one:
                OneOf(path, one, node);
                break;
            case ListKind list:
                List(path, list, node);
                break;
            case OpenMapKind open:
                Add(path, Is<MapNode>(path, open, node) is { } m ? new PresentValue(m, 0) : null);
                break;
            case TableKind table:
                Add(path, new TableReader(_problems).Read(path, table, node));
                break;
            default:
                Scalar(path, key.Kind, node);
                break;
        }
    }

    private void Map(string path, MapKind kind, DocumentNode node)
    {
        if (Is<MapNode>(path, kind, node) is not { } map)
        {
            return;
        }

        if (path.Length > 0)
        {
            Add(path, new PresentValue(map, 0));
        }

        foreach (var entry in map.Entries)
        {
            if (kind.Find(entry.Name) is { } key)
            {
                Value(Below(path, key.Name), key, entry.Value);
            }
            else
            {
                Unknown(path, entry, kind.Keys);
            }
        }

        foreach (var key in kind.Keys.Where(k => map.Find(k.Name) is null))
        {
            Missing(Below(path, key.Name), key, map);
        }
    }

    private void Missing(string path, Key key, DocumentNode parent)
    {
        switch (key)
        {
            case { Required: true }:
                _problems.Note(parent.Place, path, Texts.Nothing, KindTexts.Wanted(key.Kind));
                break;
            case { Default: { } text }:
                Value(path, key, new ScalarNode(parent.Place, text, Quoted: false));
                break;
            case { Kind: MapKind { DefaultsHold: true } map }:
                foreach (var below in map.Keys)
                {
                    Missing(Below(path, below.Name), below, parent);
                }

                break;
        }
    }

    private void Unknown(string path, MapEntry entry, ImmutableArray<Key> known)
    {
        var near = _problems.IsFull ? null : Nearest.Find(entry.Name, known.Select(k => k.Name));
        var wanted = _problems.IsFull ? ""
            : near is not null ? Texts.Suggest(near)
            : KeyPaths.Elsewhere(_table, entry.Name) is { } elsewhere ? Texts.Suggest(elsewhere)
            : Texts.OneOf(known.Select(k => k.Name));
        _problems.Note(entry.Place, Below(path, entry.Name), Texts.UnknownKey, wanted);
    }

    private void OneOf(string path, OneOfKind kind, DocumentNode node)
    {
        if (Is<MapNode>(path, kind, node) is not { } map)
        {
            return;
        }

        Add(path, new PresentValue(map, 0));
        foreach (var entry in map.Entries)
        {
            if (kind.Find(entry.Name) is { } key)
            {
                Value(Below(path, key.Name), key, entry.Value);
            }
            else
            {
                Unknown(path, entry, kind.Keys);
            }
        }

        if (map.Entries.Length != 1)
        {
            _problems.Note(map.Place, path, Texts.KeysTogether(map.Entries.Select(e => e.Name)), KindTexts.Wanted(kind));
        }
    }

    private void List(string path, ListKind kind, DocumentNode node)
    {
        if (Is<ListNode>(path, kind, node) is not { } list)
        {
            return;
        }

        if (list.Items.Length < kind.Least)
        {
            _problems.Note(list.Place, path, Texts.EmptyList, KindTexts.Wanted(kind));
        }

        if (list.Items.Length > kind.Most)
        {
            _problems.Note(list.Place, path, Texts.Items(list.Items.Length), Texts.AtMostItems(kind.Most));
            return;
        }

        Add(path, new PresentValue(list, list.Items.Length));
        for (var i = 0; i < list.Items.Length; i++)
        {
            Value(string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"), kind.Item, list.Items[i]);
        }
    }

    private void Scalar(string path, KeyKind kind, DocumentNode node)
    {
        if (Is<ScalarNode>(path, kind, node) is not { } scalar)
        {
            return;
        }

        switch (kind)
        {
            case QuantityKind quantity:
                Add(path, new QuantityReader(_problems).Read(path, quantity, scalar) is { } m ? new NumberValue(scalar, m) : null);
                break;
            case WholeKind whole when ulong.TryParse(scalar.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                && n >= whole.Least && n <= whole.Most:
                Add(path, new WholeValue(scalar, n));
                break;
            case ChoiceKind choice when choice.Words.Contains(scalar.Text):
            case TextKind when IsOneLine(scalar.Text):
                Add(path, new TextValue(scalar, scalar.Text));
                break;
            case ChoiceKind choice:
                var near = Nearest.Find(scalar.Text, choice.Words);
                _problems.Note(scalar.Place, path, Texts.Quote(scalar.Text), near is not null ? Texts.Suggest(near) : KindTexts.Wanted(kind));
                break;
            default:
                _problems.Note(scalar.Place, path, Texts.Quote(scalar.Text), KindTexts.Wanted(kind));
                break;
        }
    }

    private static bool IsOneLine(string text) => text.Length > 0 && IsShortLine(text);

    private T? Is<T>(string path, KeyKind kind, DocumentNode node)
        where T : DocumentNode
    {
        if (node is not T and not BrokenNode)
        {
            _problems.Note(node.Place, path, KindTexts.AsFound(node), KindTexts.Wanted(kind));
        }

        return node as T;
    }

    private void Add(string path, ReadValue? value)
    {
        if (value is not null)
        {
            _values[path] = value;
        }
    }

    private static string Below(string path, string name) => path.Length == 0 ? name : path + "." + name;
}
