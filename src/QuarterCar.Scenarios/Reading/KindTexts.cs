using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>What a key wants, in words made from the key table.</summary>
public static class KindTexts
{
    /// <summary>The whole want, with units or choices.</summary>
    public static string Wanted(KeyKind kind) => kind switch
    {
        QuantityKind q => Quantity(q),
        WholeKind w => Texts.WholeBetween(w.Least, w.Most),
        ChoiceKind c => Texts.OneOf(c.Words),
        TextKind => Texts.OneLineOfText(ValueReader.LongestText),
        MapKind m => Texts.MapOf(m.Keys.Select(k => k.Name)),
        OneOfKind o => Texts.MapOfOne(o.Keys.Select(k => k.Name)),
        OpenMapKind o => Texts.MapWith(o.Wanted),
        ListKind l => Texts.ListOf(l.Item.Help),
        TableKind t => Texts.TableOf(Quantity(t.At), Quantity(t.Value), t.OrPlainValue),
        _ => Texts.AValue,
    };

    /// <summary>One row of a table.</summary>
    public static string WantedRow(TableKind table) => Texts.RowOf(Quantity(table.At), Quantity(table.Value));

    /// <summary>A number in its range.</summary>
    public static string InRange(QuantityKind kind)
    {
        var noun = Noun(kind.Dimension);
        var (least, counts, most) = kind.Range;
        var unit = UnitTable.SiName(kind.Dimension);
        return (kind.Dimension, least, counts, most) switch
        {
            (Dimension.Temperature, 0, _, _) => Texts.AboveAbsoluteZero,
            (_, 0, false, double.PositiveInfinity) => Texts.AboveZero(noun),
            (_, 0, true, double.PositiveInfinity) => Texts.ZeroOrMore(noun),
            (_, _, _, double.PositiveInfinity) => Texts.OrMore(noun, Measured.Write(least, unit)),
            (_, 0, false, _) => Texts.AboveZeroAtMost(noun, Measured.Write(most, unit)),
            _ => Texts.Between(noun, Measured.Write(least, unit), Measured.Write(most, unit)),
        };
    }

    /// <summary>A node that is not what it should be.</summary>
    public static string AsFound(DocumentNode node) => node switch
    {
        ScalarNode { IsNothing: true } => Texts.Nothing,
        ScalarNode s => Texts.Quote(s.Text),
        ListNode { Items.IsEmpty: true } => Texts.EmptyList,
        ListNode => Texts.AList,
        _ => Texts.AMap,
    };

    /// <summary>"a length".</summary>
    public static string Noun(Dimension dimension) => dimension switch
    {
        Dimension.Number => "a plain number",
        Dimension.Length => "a length",
        Dimension.Force => "a force or weight",
        Dimension.SpringRate => "a spring rate",
        Dimension.Damping => "a damping rate",
        Dimension.Speed => "a speed",
        Dimension.Pressure => "a pressure",
        Dimension.Volume => "a volume",
        Dimension.Time => "a time",
        Dimension.Angle => "an angle",
        Dimension.Temperature => "a temperature",
        Dimension.Loss => "a loss (time per length)",
        _ => "a percentage",
    };

    private static string Quantity(QuantityKind kind) =>
        kind.Dimension == Dimension.Number ? Texts.PlainNumber : Texts.WithUnit(Noun(kind.Dimension), UnitTable.Names(kind.Dimension));
}
