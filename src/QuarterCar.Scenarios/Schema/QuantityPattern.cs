using System.Text;
using System.Text.RegularExpressions;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Schema;

/// <summary>
/// Regular expressions (the dialect of JSON Schema, ECMA-262) of a number with its unit, made from the unit table. They know the sign that a range
/// wants, not its size: how much two units of one dimension differ is no matter of spelling.
/// </summary>
public static class QuantityPattern
{
    /// <summary>A line of plain text (<see cref="PlainText.IsLine"/>).</summary>
    public const string Line = "^[^\\u0000-\\u001f\\u007f-\\u009f\\u2028-\\u202e\\u2066-\\u2069\\ufeff]*$";

    private const string _digits = @"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?";
    private const string _minus = "[-\u2212]";
    private const string _notZero = "(?=[0-9.]*[1-9])";

    /// <summary>The whole text of a value.</summary>
    public static string Of(QuantityKind kind) => $"^\\s*{Number(kind)}{Unit(kind.Dimension)}\\s*$";

    /// <summary>The whole text of a change in a load case, of a new value behind '=', or of a new value.</summary>
    public static string Change(QuantityKind kind) => $"^\\s*=?\\s*(?:[+]|{_minus})?{_digits}{Unit(kind.Dimension)}\\s*$";

    /// <summary>The whole text of a half-width: of the value's own dimension, or a share of it.</summary>
    public static string HalfWidth(QuantityKind kind) => $"^\\s*[+]?{_notZero}{_digits}(?:{Unit(kind.Dimension)}|{Unit(Dimension.Share)})\\s*$";

    private static string Number(QuantityKind kind)
    {
        // A temperature's sign says nothing about absolute zero.
        var (least, counts) = kind.Dimension == Dimension.Temperature ? (double.NegativeInfinity, false) : (kind.Range.Least, kind.Range.LeastCounts);
        return (least, counts) switch
        {
            ( < 0, _) => $"(?:[+]|{_minus})?{_digits}",
            (0, true) => $"(?:[+]?|{_minus}(?![0-9.]*[1-9])){_digits}",
            _ => $"[+]?{_notZero}{_digits}",
        };
    }

    private static string Unit(Dimension dimension) => dimension == Dimension.Number
        ? ""
        : "\\s*(?:" + string.Join('|', UnitTable.All.Where(u => u.Dimension == dimension).Select(u => Spelling(u.Name))) + ")";

    /// <summary>A unit's name with the spaces and the typographic signs that the reader takes.</summary>
    private static string Spelling(string name)
    {
        var text = new StringBuilder();
        for (var i = 0; i < name.Length; i++)
        {
            var (sign, length) = name[i..] switch
            {
                ['*', ..] => ("[*\u00b7]", 1),
                ['^', '3', ..] => ("(?:\\^ *3|\u00b3)", 2),
                ['d', 'e', 'g', ..] => ("(?:d *e *g|\u00b0)", 3),
                var rest => (Regex.Escape(rest[..1]), 1),
            };
            text.Append(i > 0 ? " *" : "").Append(sign);
            i += length - 1;
        }

        return text.ToString();
    }
}
