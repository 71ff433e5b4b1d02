using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Reads a table of rows of two values and holds it against its rules.</summary>
public readonly struct TableReader(ProblemList problems)
{
    /// <summary>The table, SI; null where a problem was noted.</summary>
    public TableValue? Read(string path, TableKind kind, DocumentNode node)
    {
        if (kind.OrPlainValue && node is ScalarNode scalar)
        {
            return new QuantityReader(problems).Read(path, kind.Value, scalar) is { } m ? new TableValue(node, [new TablePoint(0, m.Si)]) : null;
        }

        if (node is not ListNode { Items.IsEmpty: false } list)
        {
            problems.Note(node.Place, path, KindTexts.AsFound(node), KindTexts.Wanted(kind));
            return null;
        }

        var before = problems.Count;
        var points = ImmutableArray.CreateBuilder<TablePoint>();
        for (var i = 0; i < list.Items.Length; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]");
            if (!(i == 0 && IsOrigin(kind, list)) && Row(at, kind, list.Items[i]) is { } point)
            {
                Follow(at, kind, list.Items[i], points.Count > 0 ? points[^1] : null, point);
                points.Add(point);
            }
        }

        return problems.Count > before ? null : new TableValue(node, points.ToImmutable());
    }

    /// <summary>A first row of two zeros where the lines start at the origin anyway: said twice, no mistake.</summary>
    private static bool IsOrigin(TableKind kind, ListNode list)
    {
        var free = new ProblemList();
        return kind.FromOrigin && list.Items.Length > 1 && list.Items[0] is ListNode { Items: [ScalarNode a, ScalarNode b] }
            && new QuantityReader(free).Read("", kind.At with { Range = ValueRange.Any }, a) is { Si: 0 }
            && new QuantityReader(free).Read("", kind.Value with { Range = ValueRange.Any }, b) is { Si: 0 };
    }

    private TablePoint? Row(string path, TableKind kind, DocumentNode node)
    {
        if (node is not ListNode { Items: [ScalarNode first, ScalarNode second] })
        {
            if (node is not BrokenNode)
            {
                problems.Note(node.Place, path, KindTexts.AsFound(node), KindTexts.WantedRow(kind));
            }

            return null;
        }

        var quantity = new QuantityReader(problems);
        var at = quantity.Read(path + "[0]", kind.At, first);
        var value = quantity.Read(path + "[1]", kind.Value, second);
        return at is { } a && value is { } v ? new TablePoint(a.Si, v.Si) : null;
    }

    private void Follow(string path, TableKind kind, DocumentNode node, TablePoint? last, TablePoint point)
    {
        if (last is not { } before)
        {
            return;
        }

        var cells = ((ListNode)node).Items;
        if (point.At <= before.At)
        {
            problems.Note(cells[0].Place, path + "[0]", KindTexts.AsFound(cells[0]), Texts.RisingColumn(KindTexts.Noun(kind.At.Dimension)));
        }

        if (kind.ValueNeverFalls && point.Value < before.Value)
        {
            problems.Note(cells[1].Place, path + "[1]", KindTexts.AsFound(cells[1]), Texts.NotFallingColumn(KindTexts.Noun(kind.Value.Dimension)));
        }
    }
}
