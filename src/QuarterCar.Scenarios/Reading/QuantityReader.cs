using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Reads one number with its unit, or notes what is wrong with it: no number, not finite, no unit, a unit of another dimension, out of range.</summary>
public readonly struct QuantityReader(ProblemList problems)
{
    /// <summary>The number as written; null where a problem was noted.</summary>
    public Measured? Read(string path, QuantityKind kind, ScalarNode scalar)
    {
        var (found, wanted) = Judge(kind, scalar.Text, out var measured);
        if (found is null)
        {
            return measured;
        }

        problems.Note(scalar.Place, path, found, wanted);
        return null;
    }

    private static (string? Found, string Wanted) Judge(QuantityKind kind, string text, out Measured measured)
    {
        var quoted = Texts.Quote(text);
        if (!Measured.TryParse(text, out measured))
        {
            return (quoted, KindTexts.Wanted(kind));
        }

        if (measured.UnitName.StartsWith(','))
        {
            return (quoted, Texts.FullStop);
        }

        if (measured.Dimension is null)
        {
            return (Texts.UnknownUnit(text, measured.UnitName), KindTexts.Wanted(kind));
        }

        if (measured.Dimension != kind.Dimension)
        {
            return (measured.Unit is null ? quoted : Texts.OfDimension(text, KindTexts.Noun(measured.Unit.Dimension)), KindTexts.Wanted(kind));
        }

        if (!double.IsFinite(measured.Si))
        {
            return (quoted, Texts.Finite);
        }

        return kind.Range.Holds(measured.Si) ? (null, "") : (quoted, KindTexts.InRange(kind));
    }
}
