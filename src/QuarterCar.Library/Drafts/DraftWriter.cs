using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Drafts;

/// <summary>Turns a draft into the document that a file would give: properties become keys, so that one reader judges both.</summary>
internal static class DraftWriter
{
    private static readonly Place Nowhere = new("draft", 0, 0);

    /// <summary>The document of a draft.</summary>
    public static DocumentNode Node(Draft draft) => new MapNode(Nowhere,
        [.. draft.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Select(p => (p.Name, Value: p.GetValue(draft)))
            .Where(p => p.Value is not null)
            .Select(p => Entry(QuantityTexts.Snake(p.Name), Value(p.Value!)))]);

    private static DocumentNode Value(object value) => value switch
    {
        Draft draft => Node(draft),
        Ground ground => Ground(ground),
        MotionRatio { Number: { } number } => Text(QuantityTexts.Scalar(number)!),
        MotionRatio ratio => List(ratio.Rows.Select(r => Row(r))),
        CaseDraft one => new MapNode(Nowhere, [Entry(CaseBlock.NameKey, Quoted(one.Name)), .. one.Changes.Select(c => Entry(c.Key, Text(c.Value)))]),
        IReadOnlyDictionary<string, double> numbers => new MapNode(Nowhere, [.. numbers.Select(n => Entry(n.Key, Text(QuantityTexts.Scalar(n.Value)!)))]),
        IReadOnlyDictionary<string, string> texts => new MapNode(Nowhere, [.. texts.Select(t => Entry(t.Key, Text(t.Value)))]),
        string text => Quoted(text),
        IEnumerable items => List(items.Cast<object>().Select(i => i is ITuple row ? Row(row) : Value(i))),
        _ => Text(QuantityTexts.Scalar(value)!),
    };

    private static MapNode Ground(Ground piece) => new(Nowhere,
    [
        Entry(piece.Name, piece.Value is { } value ? Text(value) : new MapNode(Nowhere, [.. piece.Keys.Select(k => Entry(k.Key, Text(k.Value)))])),
    ]);

    private static ListNode Row(ITuple row) => List(Enumerable.Range(0, row.Length).Select(i => (DocumentNode)Text(QuantityTexts.Scalar(row[i]!)!)));

    private static ListNode List(IEnumerable<DocumentNode> items) => new(Nowhere, [.. items]);

    private static MapEntry Entry(string name, DocumentNode value) => new(name, value, Nowhere);

    private static ScalarNode Text(string text) => new(Nowhere, text, Quoted: false);

    private static ScalarNode Quoted(string text) => new(Nowhere, text, Quoted: true);
}
