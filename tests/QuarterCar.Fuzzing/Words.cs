using System.Collections.Immutable;

using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Fuzzing;

/// <summary>What mutations put in: words that mean something to a reader, and words that mean harm.</summary>
internal static class Words
{
    /// <summary>For every reader.</summary>
    public static readonly ImmutableArray<string> Any =
    [
        "", " ", "\n", "\r", "\r\n", "\t", "\0", "\ufeff", "\u2028", "\u2029", "\u0085", "\u00a0", "\u202e", "\u2066", "\u200b", "\u001b[2J", "\u001b]0;x\u0007", "\b", "\u007f", "\u009b",
        "\ud83d\ude00", "e\u0301\u0301\u0301\u0301", "ﷺ", "<script>alert(1)</script>", "<b>", "&amp;", "\" onload=\"x", "'", "\"", "\\", "/", "../", "/etc/passwd", "/dev/stdin", "%n%s", "{0}", "$(x)", "`x`",
        "=1+1", "+1", "-1", "@x", ",", ";", ":", "#", "=", "|", "(", ")", "[", "]", "{", "}", "\u2212", "0", "1", "-1", "1e999", "none", "null", "true", "NaN",
    ];

    /// <summary>YAML's own signs, its ways to name types and to grow without end.</summary>
    public static readonly ImmutableArray<string> Yaml =
    [
        ": ", "- ", "? ", "| ", "> ", "|+\n", ">-\n", "|9\n", "---\n", "...\n", "--- !!map\n", "%YAML 1.2\n", "%YAML 9.9\n", "%TAG ! tag:x,2000:\n", "&a ", "*a", "&a [*a]", "<<: ", "<<: *a", "!t ", "!", "! ",
        "!!str ", "!!int ", "!!float ", "!!binary ", "!!set ", "!!omap ", "!!python/object:os.system ", "!!System.Diagnostics.Process ", "!<tag:yaml.org,2002:str> ", "!<tag:x> ", "!e!x ", "~", "\\x00", "\"\\u0000\"", "\"\\ud800\"",
        "\"\\U0010FFFF\"", "\"\\x1b[2J\"", "\"\\e\"", "\"\\N\"", "\"\\L\"", "\"\\", "''", "[[", "{{", "]]", "}}", "[]", "{}", "[,]", "{,}", "{a: b, a: c}", "[a: b]", "a: b: c", "\n  ", "\n    ", "\n- ", "\n  - ", "# x\n", " #", "\t",
    ];

    /// <summary>A scenario's keys, words and units.</summary>
    public static readonly ImmutableArray<string> Scenario =
    [
        .. KeyPaths.All(ScenarioKeys.Root), .. KeyPaths.All(ScenarioKeys.Root).Select(p => p[(p.LastIndexOf('.') + 1)..]).Distinct(), .. UnitTable.All.Select(u => " " + u.Name),
        "terrain[0]", "terrain[1].step", "terrain[99]", "cases[0].name", "coilover.damper.zones[0].from", "name", "from", "to", "within", "shape", "normal", "uniform", "point", "rolling_circle", "footprint", "ride_height", "full_droop",
        "shaft", "axle", "flat", "step", "ramp", "bump", "whoops", "random", "profile", "file", "rise", "length", "height", "spacing", "count", "iso8608", "seed", "A", "H", "course.csv", "+3 %", "=-24 in", "bottom_out: 0", "up_travel_used",
    ];

    /// <summary>CSV's own signs, and the headers of every list.</summary>
    public static readonly ImmutableArray<string> Csv =
    [
        ",,", ",\n", "\",\"", "\"\"", "\"\n\"", "\"a\"b", "\t", ";", "#", "distance_m", "distance_in", "height_mm", "height_", "rate_lbf_in", "rate_N_mm", "rate_", "free_length_in", "free_length_mm", "solid_length_in", "solid_length_mm", "name", "title",
        "inner_diameter_in", "wire_diameter_mm", "mean_diameter_m", "distance_m,height_m\n", "0,0\n", "1,0\n",
    ];

    /// <summary>JSON's own signs.</summary>
    public static readonly ImmutableArray<string> Json =
    [
        "{\"", "\":", "\",\"", "[", "]", "{}", "[]", "[null]", "null", "true", "1e999", "-0", "1.5", "-1", "2147483647", "9223372036854775807", "\\u0000", "\\ud800", "\\", "//", "/*", "\"$type\":\"System.Diagnostics.Process, System\",",
        "\"setup\"", "\"text\"", "\"changes\"", "\"path\"", "\"edits\"", "\"steps\"", "\"count\"", "\"hold\"", "\"base\"", "\"units\"", "\"form\"", "\"case\"", "\"kind\"", "\"setups\"", "\"figure\"", "terrain[+]", "excitation",
        "\"arguments\"", "\"files\"", "\"name\"", "\"parts\"", "\"part\"", "\"setup_count\"", "\"study\"", "\"paths\"", "\"seed\"", "\"values\"", "\"figures\"", "\"title\"", "\"note\"", "..", "../../x", "/tmp/x", "",
    ];
}
