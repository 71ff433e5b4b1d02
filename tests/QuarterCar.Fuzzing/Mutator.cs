using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;

namespace QuarterCar.Fuzzing;

/// <summary>Makes a new input of known ones: bytes, words, lines and the whole are changed, one to a few times.</summary>
/// <param name="random">The source of every choice.</param>
/// <param name="words">What may be put in.</param>
internal sealed partial class Mutator(Random random, ImmutableArray<string> words)
{
    /// <summary>Longest input made, bytes.</summary>
    public const int Longest = 1 << 16;

    private delegate string Change(Mutator m, string text, string other);

    // Texts are bytes here, a character a byte, so that what is no UTF-8 is kept; words are put in as their UTF-8 bytes.
    private static readonly Encoding s_bytes = Encoding.Latin1;

    private static readonly Change[] s_changes =
    [
        (m, t, _) => m.AtByte(t, c => (char)(c ^ (1 << m.Below(8)))),
        (m, t, _) => m.AtByte(t, _ => (char)m.Below(256)),
        (m, t, _) => m.Cut(t, 1 + m.Below(8)),
        (m, t, _) => m.Cut(t, 1 + m.Below(t.Length + 1)),
        (m, t, _) => m.Put(t, m.Piece(t, 1 + m.Below(200))),
        (m, t, o) => m.Put(t, m.Piece(o, 1 + m.Below(200))),
        (m, t, o) => t[..m.Below(t.Length + 1)] + o[m.Below(o.Length + 1)..],
        (m, t, _) => m.Put(t, m.Word()),
        (m, t, _) => m.Put(t, m.Word()),
        (m, t, _) => m.Put(t, string.Concat(Enumerable.Repeat(m.Word(), 1 + m.Below(m.Below(20) == 0 ? 5000 : 40)))),
        (m, t, _) => m.Token(t, _ => m.Word()),
        (m, t, _) => m.Token(t, _ => m.Word()),
        (m, t, _) => m.Token(t, _ => m.Number()),
        (m, t, _) => m.Token(t, w => w + w),
        (m, t, _) => m.Token(t, _ => ""),
        (m, t, _) => m.Token(t, w => m.Quote() + w + (m.Below(4) == 0 ? "" : m.Quote())),
        (m, t, _) => m.Numbers(t),
        (m, t, o) => m.Token(t, _ => m.TokenOf(o)),
        (m, t, _) => m.Lines(t, l => (l[m.Below(l.Count)], l[m.Below(l.Count)]) is var (a, b) ? [.. l.Select(x => x == a ? b : x == b ? a : x)] : l),
        (m, t, _) => m.Lines(t, l => [.. l.Where((_, i) => i != m.Below(l.Count))]),
        (m, t, _) => m.Lines(t, l => m.Repeated(l)),
        (m, t, _) => m.Lines(t, l => m.Shifted(l)),
        (m, t, o) => m.Lines(t, l => m.With(l, m.LineOf(o))),
        (m, t, _) => m.Whole(t),
    ];

    /// <summary>The next input.</summary>
    /// <param name="from">Inputs to start from, seeds first.</param>
    /// <param name="seeds">How many of them are seeds.</param>
    public byte[] Next(IReadOnlyList<byte[]> from, int seeds)
    {
        // Half of them from the seeds themselves: what is kept drifts away from what a reader takes.
        string text = s_bytes.GetString(from[Below(Below(2) == 0 ? seeds : from.Count)]), other = s_bytes.GetString(from[Below(from.Count)]);
        int times = 1 + Math.Min(Below(4), Below(4));
        for (int i = 0; i < times && text.Length < Longest; i++) text = s_changes[Below(s_changes.Length)](this, text, other);
        return s_bytes.GetBytes(text.Length <= Longest ? text : text[..Longest]);
    }

    private int Below(int n) => random.Next(Math.Max(1, n));

    private string Word() => s_bytes.GetString(Encoding.UTF8.GetBytes(words[Below(words.Length)]));

    private string Quote() => Below(2) == 0 ? "'" : "\"";

    private string Piece(string text, int length)
    {
        int at = Below(text.Length);
        return text.Substring(at, Math.Min(length, text.Length - at));
    }

    private string AtByte(string text, Func<char, char> change)
    {
        if (text.Length == 0) return text;
        int at = Below(text.Length);
        return text[..at] + change(text[at]) + text[(at + 1)..];
    }

    private string Cut(string text, int length)
    {
        int at = Below(text.Length + 1);
        return text[..at] + text[Math.Min(text.Length, at + length)..];
    }

    private string Put(string text, string piece) => text.Insert(Below(text.Length + 1), piece);

    private string Number() => Below(6) switch
    {
        0 => Extreme(),
        1 => FormattableString.Invariant($"{random.Next(-1000, 1000)}"),
        2 => FormattableString.Invariant($"{Math.Pow(10, random.Next(-330, 310))}"),
        3 => new string((char)('0' + Below(10)), 1 + Below(400)),
        4 => "0." + new string('0', Below(40)) + "1",
        _ => FormattableString.Invariant($"{random.NextDouble() * 100}"),
    };

    private string Extreme() => s_extremes[Below(s_extremes.Length)];

    private static readonly string[] s_extremes = ["0", "-0", "1e308", "-1e308", "1e999", "5e-324", "NaN", ".inf", "-.inf", "Infinity", "9223372036854775807", "18446744073709551616", "0x7f", "1_000", "1,5", "1e", "+", "-", "٣", "１"];

    private string Numbers(string text)
    {
        string factor = Number();
        int one = Below(6);
        return NumberWord().Replace(text, w => Below(6) == one ? factor : w.Value);
    }

    private string Token(string text, Func<string, string> change)
    {
        if (text.Length == 0) return change("");
        Match token = Tokens().Match(text, Below(text.Length));
        return token.Success ? text[..token.Index] + change(token.Value) + text[(token.Index + token.Length)..] : text;
    }

    private string TokenOf(string text) => text.Length == 0 ? "" : Tokens().Match(text, Below(text.Length)).Value;

    private string LineOf(string text) => text.Split('\n') is var all ? all[Below(all.Length)] : "";

    private string Lines(string text, Func<List<string>, List<string>> change) => string.Join('\n', change([.. text.Split('\n')]));

    private List<string> With(List<string> lines, string line)
    {
        lines.Insert(Below(lines.Count + 1), line);
        return lines;
    }

    private List<string> Repeated(List<string> lines)
    {
        int at = Below(lines.Count), times = Below(Below(20) == 0 ? 3000 : 20);
        if (lines[at].Length * times < Longest) lines.InsertRange(at, Enumerable.Repeat(lines[at], times));
        return lines;
    }

    private List<string> Shifted(List<string> lines)
    {
        int from = Below(lines.Count), to = Math.Min(lines.Count, from + 1 + Below(6));
        string by = Below(5) == 0 ? "\t" : new string(' ', Below(5));
        for (int i = from; i < to; i++) lines[i] = by.Length == 0 ? lines[i].TrimStart() : by + lines[i];
        return lines;
    }

    // What another program or another machine does to a whole file.
    private string Whole(string text) => Below(10) switch
    {
        0 => text.Replace("\n", "\r\n", StringComparison.Ordinal),
        1 => text.Replace('\n', '\r'),
        2 => "\u00ef\u00bb\u00bf" + text,
        3 => "\u00ff\u00fe" + string.Concat(text.Select(c => c + "\0")),
        4 => "\u00fe\u00ff" + string.Concat(text.Select(c => "\0" + c)),
        5 => text + "\0",
        6 => text.Replace("\n", "", StringComparison.Ordinal),
        7 => new string("[{(<\"'"[Below(6)], 1 + Below(3000)) + text,
        8 => text.Replace("  ", "\t", StringComparison.Ordinal),
        _ => text + text,
    };

    [GeneratedRegex(@"[A-Za-z_][A-Za-z0-9_]*|[+-]?[0-9][0-9.eE+-]*|\s+|.", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex Tokens();

    [GeneratedRegex("[+-]?[0-9][0-9.eE+-]*", RegexOptions.CultureInvariant)]
    private static partial Regex NumberWord();
}
