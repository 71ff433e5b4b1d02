using System.Collections.Immutable;
using System.Globalization;

using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace QuarterCar.Scenarios.Documents;

/// <summary>
/// Text to <see cref="DocumentNode"/>, by the YAML parser's events: no objects are made by name, and what can grow without bound is refused
/// (anchors, aliases, tags, deep nesting, too many values).
/// </summary>
public sealed class YamlReader
{
    /// <summary>Nesting allowed; a scenario needs five.</summary>
    public const int DeepestNesting = 32;

    /// <summary>Values and keys allowed in one document; a long scenario has some hundreds.</summary>
    public const int MostNodes = 100_000;

    private readonly string _file;
    private readonly bool _hasLines;
    private readonly ProblemList _problems;
    private readonly Scanner _scanner;
    private readonly Parser _parser;
    private int _nodes;

    private YamlReader(string file, string text, bool hasLines, ProblemList problems)
    {
        (_file, _hasLines, _problems) = (file, hasLines, problems);
        _scanner = new Scanner(new StringReader(text), skipComments: true);
        _parser = new Parser(_scanner);
    }

    /// <summary>Reads one document; null where nothing can be made of it, with the reason noted.</summary>
    /// <param name="file">Named in every problem.</param>
    /// <param name="text">The document.</param>
    /// <param name="problems">Takes the mistakes.</param>
    /// <param name="hasLines">False for an override: its problems name no line.</param>
    public static DocumentNode? Read(string file, string text, ProblemList problems, bool hasLines = true)
    {
        var reader = new YamlReader(file, text, hasLines, problems);
        try
        {
            return reader.Document();
        }
        catch (YamlException e)
        {
            NoteSyntax(file, text, hasLines, e, problems);
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            // What the parser lets slip on hostile text is still only text that is not YAML.
            Mark at = reader._scanner.CurrentPosition;
            problems.Note(new Place(file, hasLines ? (int)at.Line : 0, (int)at.Column), "", Texts.NotYaml(Texts.Crossed), Texts.YamlText);
            return null;
        }
        catch (TooMuchException)
        {
            return null;
        }
    }

    private static void NoteSyntax(string file, string text, bool hasLines, YamlException e, ProblemList problems)
    {
        var tabs = hasLines ? TabLines(text) : [];
        foreach (var line in tabs)
        {
            problems.Note(new Place(file, line, 1), "", Texts.TabInIndentation, Texts.SpacesForIndentation);
        }

        if (tabs.Count == 0)
        {
            problems.Note(new Place(file, hasLines ? (int)e.Start.Line : 0, (int)e.Start.Column), "", Texts.NotYaml(e.Message), Texts.YamlText);
        }
    }

    private static List<int> TabLines(string text)
    {
        var lines = new List<int>();
        var number = 0;
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            number++;
            var indentation = line[..(line.Length - line.TrimStart(" \t").Length)];
            if (indentation.Contains('\t') && indentation.Length < line.Length)
            {
                lines.Add(number);
            }
        }

        return lines;
    }

    private DocumentNode? Document()
    {
        DocumentNode? root = null;
        while (_parser.MoveNext())
        {
            switch (_parser.Current)
            {
                case StreamStart or StreamEnd or DocumentStart or DocumentEnd:
                    break;
                case NodeEvent when root is not null:
                    _problems.Note(Here(), "", Texts.SecondDocument, Texts.OneDocument);
                    return root;
                default:
                    root = Node(0, "");
                    break;
            }
        }

        return root;
    }

    private DocumentNode Node(int depth, string path)
    {
        var place = Here();
        if (depth > DeepestNesting || ++_nodes > MostNodes)
        {
            _problems.Note(place, path, depth > DeepestNesting ? Texts.TooDeep(DeepestNesting) : Texts.TooManyNodes(MostNodes), Texts.PlainScenario);
            throw new TooMuchException();
        }

        switch (_parser.Current)
        {
            case AnchorAlias:
                _problems.Note(place, path, Texts.Alias, Texts.PlainScenario);
                return new BrokenNode(place);
            case Scalar scalar:
                RefuseAnchorAndTag(scalar, path);
                return new ScalarNode(place, scalar.Value, scalar.Style != ScalarStyle.Plain);
            case SequenceStart start:
                RefuseAnchorAndTag(start, path);
                return List(place, depth, path);
            case MappingStart start:
                RefuseAnchorAndTag(start, path);
                return Map(place, depth, path);
            default:
                throw new YamlException(_parser.Current!.Start, _parser.Current.End, "unexpected " + _parser.Current);
        }
    }

    private ListNode List(Place place, int depth, string path)
    {
        var items = ImmutableArray.CreateBuilder<DocumentNode>();
        while (_parser.MoveNext() && _parser.Current is not SequenceEnd)
        {
            items.Add(Node(depth + 1, string.Create(CultureInfo.InvariantCulture, $"{path}[{items.Count}]")));
        }

        return new ListNode(place, items.ToImmutable());
    }

    private MapNode Map(Place place, int depth, string path)
    {
        var entries = ImmutableArray.CreateBuilder<MapEntry>();
        var lines = new Dictionary<string, int>(StringComparer.Ordinal);
        while (_parser.MoveNext() && _parser.Current is not MappingEnd)
        {
            var key = Node(depth + 1, path);
            if (!_parser.MoveNext())
            {
                break;
            }

            var name = (key as ScalarNode)?.Text;
            var below = Below(path, name ?? "");
            var value = Node(depth + 1, below);
            if (name is null)
            {
                NoteKey(key, path);
            }
            else if (lines.TryGetValue(name, out var first))
            {
                _problems.Note(key.Place, below, Texts.DuplicateKey(first), Texts.KeyOnce);
            }
            else
            {
                lines.Add(name, key.Place.Line);
                entries.Add(new MapEntry(name, AtItsKey(value, key.Place), key.Place));
            }
        }

        return new MapNode(place, entries.ToImmutable());
    }

    private static string Below(string path, string name)
    {
        var part = name.Length <= Texts.LongestQuote ? name : name[..Texts.LongestQuote];
        return path.Length == 0 ? part : path + "." + part;
    }

    /// <summary>What a block lacks is missed at the block's key, not at the first line inside it.</summary>
    private static DocumentNode AtItsKey(DocumentNode value, Place key) =>
        value is MapNode or ListNode && value.Place.Line > key.Line ? value with { Place = key } : value;

    private void NoteKey(DocumentNode key, string path)
    {
        if (key is not BrokenNode)
        {
            _problems.Note(key.Place, path, Texts.ComplexKey, Texts.PlainKey);
        }
    }

    private void RefuseAnchorAndTag(NodeEvent node, string path)
    {
        if (!node.Anchor.IsEmpty)
        {
            _problems.Note(Here(), path, Texts.Anchor(node.Anchor.Value), Texts.PlainScenario);
        }

        if (!node.Tag.IsEmpty)
        {
            _problems.Note(Here(), path, Texts.Tag, Texts.PlainScenario);
        }
    }

    private Place Here()
    {
        var start = _parser.Current!.Start;
        return new Place(_file, _hasLines ? (int)start.Line : 0, (int)start.Column);
    }

    /// <summary>Ends the reading where going on would only cost time; the reason is noted before.</summary>
    private sealed class TooMuchException : Exception;
}
