using CsCheck;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Scenarios.Tests;

/// <summary>Whatever the text, reading it ends with a scenario or with problems: never with an exception, never with neither.</summary>
public class HostileTextTests
{
    private static readonly string[] _pieces =
    [
        ": ", "- ", "{", "}", "[", "]", ",", "\n", "\t", "  ", "'", "\"", "#", "&a ", "*a", "!t ", "? ", "| ", "> ", "---\n", "...\n", "%YAML 1.2\n", "\u2028", "\ufeff", "\\",
        "title", "corner", "terrain", "cases", "limits", "tolerances", "coilover.preload", "12 in", "-1e999 lbf", ".nan", "none", "~", "=", "+3 %", "\ud83d\ude00", "<<", "\r",
    ];

    private static readonly Gen<string> _soup = Gen.Int[0, _pieces.Length - 1].Select(i => _pieces[i]).Array[0, 60].Select(string.Concat);

    [Theory]
    [InlineData("title: x\ncorner: [1, }\n", 2)]
    [InlineData("title: x\nspeed: 1 m/s\ncorner: { a: ]\n", 3)]
    public void Crossed_brackets_are_named_with_their_line(string text, int line)
    {
        var problem = Assert.Single(ScenarioReader.ReadText("crossed.yaml", text, ReadOptions.Plain).Problems);
        Assert.Equal(line, problem.Line);
        Assert.DoesNotContain("Operation", problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Random_soup_of_yaml_never_throws() => _soup.Sample(Holds, iter: 3000);

    [Fact]
    public void Random_characters_never_throw() => Gen.String[0, 200].Sample(Holds, iter: 1000);

    [Fact]
    public void Template_with_pieces_cut_out_and_put_in_never_throws() =>
        Gen.Select(Gen.Int[0, ScenarioTemplate.Text.Length - 1], Gen.Int[0, 40], Gen.Int[0, _pieces.Length - 1].Select(i => _pieces[i]).Array[0, 3].Select(string.Concat))
            .Array[1, 4]
            .Select(edits => edits.Aggregate(ScenarioTemplate.Text, Edit))
            .Sample(Holds, iter: 1500);

    [Fact]
    public void Any_set_and_any_case_never_throw() =>
        Gen.Select(_soup, _soup).Sample((set, name) => Holds(Readings.With(Readings.Bench, ReadOptions.Plain with { Sets = [set, "coilover." + set, "terrain[0]=" + set], Case = name })), iter: 1000);

    [Fact]
    public void Number_written_back_reads_the_same() => Gen.Double.Where(double.IsFinite).Sample(number =>
        Quantities.Measured.TryParse(Quantities.Measured.Write(number, "in"), out var m) && m.Number.Equals(number) && m.UnitName == "in");

    [Fact]
    public void Change_and_its_opposite_leave_the_value() => Gen.Int[-400, 400].Sample(delta =>
    {
        var sign = delta < 0 ? "" : "+";
        var text = Readings.Bench.Replace("+120 lbf", FormattableString.Invariant($"{sign}{delta} lbf"), StringComparison.Ordinal);
        var weight = Readings.With(text, ReadOptions.Plain with { Case = "heavy", Nut = NutRule.Reset }).Good().Corner.SprungWeight!.Value;
        return Math.Abs(weight - ((800 + delta) * 4.4482216152605)) < 1e-11; // whole pounds: one product's rounding
    });

    private static string Edit(string text, (int At, int Cut, string Put) edit)
    {
        var at = Math.Min(edit.At, text.Length);
        return text[..at] + edit.Put + text[Math.Min(at + edit.Cut, text.Length)..];
    }

    private static void Holds(string text) => Holds(ScenarioReader.ReadText("soup.yaml", text, ReadOptions.Plain));

    private static void Holds(ReadResult result)
    {
        Assert.Equal(result.Scenario is null, result.Problems.Length > 0);
        Assert.All(result.Problems, p => Assert.DoesNotContain('\n', p.ToString()));
    }
}
