using System.Globalization;

namespace QuarterCar.Scenarios;

/// <summary>Every message of the reader, on one page. Each is the "found" or the "wanted" half of "found …; wanted …".</summary>
public static class Texts
{
    /// <summary>Longest piece of the input that a message repeats.</summary>
    public const int LongestQuote = 60;

    public const string Nothing = "nothing";
    public const string UnknownKey = "an unknown key";
    public const string EmptyList = "an empty list";
    public const string AList = "a list";
    public const string AMap = "a map";
    public const string AValue = "a value";
    public const string CorrectedFile = "the mistakes above corrected first";

    // Files.
    public const string NoSuchFile = "no such file";
    public const string NoPermission = "a file that may not be read";
    public const string ADirectory = "a directory";
    public const string EmptyFile = "an empty file";
    public const string NotUtf8 = "bytes that are not UTF-8 text";
    public const string ScenarioFile = "a scenario file (YAML)";
    public const string Utf8Text = "a text file in UTF-8";
    public const string ReadableFile = "a file that can be read";

    // YAML.
    public const string TabInIndentation = "a tab in the indentation";
    public const string SpacesForIndentation = "spaces: YAML takes no tabs there";
    public const string YamlText = "YAML: 'key: value' lines, indented by spaces";
    public const string SecondDocument = "a second document after '---'";
    public const string OneDocument = "one document a file";
    public const string Alias = "a YAML alias (*name)";
    public const string Tag = "a YAML tag (!name)";
    public const string PlainScenario = "plain keys and values: anchors, aliases, tags and deep nesting are not read";
    public const string ComplexKey = "a list or map in place of a key";
    public const string PlainKey = "a plain word as key";
    public const string KeyOnce = "each key once";

    // Values.
    public const string Finite = "a finite number";
    public const string FullStop = "a full stop as decimal sign and no thousands separators";
    public const string PlainNumber = "a plain number without unit";
    public const string AboveAbsoluteZero = "a temperature above absolute zero";

    // Overrides and cases.
    public const string PathAndValue = "PATH=VALUE, like coilover.preload=1.4 in";
    public const string UnknownPath = "an unknown path";
    public const string KnownPathWanted = "a dotted path into the scenario, lists counted from 0, like coilover.stop_nut.gap or terrain[1].step";
    public const string NoCases = "a scenario with cases";
    public const string CaseName = "a name for each case";
    public const string PlainCaseName = "a line of plain text as the case's name, at most 200 characters";
    public const string OtherName = "another name: each case's name once";
    public const string ChangeableValue = "a number to change; write the whole new value without a leading sign, or behind '='";
    public const string PresentValue = "a value in the scenario that the change starts from";
    public const string NoNumberThere = "a path to what is no single number";
    public const string NothingThere = "a path to what this scenario does not give";
    public const string MisfitPath = "a path that does not fit what stands there";
    public const string ForVarying = "a path to a number in the scenario";
    public const string ToleranceValue = "a percentage, a half-width with its unit, or { within: 4 %, shape: normal }";
    public const string PositiveWidth = "a half-width above 0";
    public const string NutNotPlaced = "a stop nut whose place in the scenario as written could not be worked out";
    public const string NutResetAdvice = "a scenario that stands on its springs, or --nut reset";
    public const string NutAboveSlider = "a stop nut that would stand above the slider's free position";
    public const string LoadNotPlaced = "a spring load whose sprung weight could not be worked out from the scenario as written";
    public const string LoadAdvice = "a scenario that stands on its springs, or sprung_weight instead";

    // Rules across keys.
    public const string BothLoads = "sprung_weight and spring_load";
    public const string OneLoad = "one of them";
    public const string SprungWeightOrLoad = "sprung_weight, or spring_load: the load on the springs at ride height";
    public const string TerrainOrDrop = "terrain and speed, or drop";
    public const string TerrainAndDrop = "drop beside terrain or speed";
    public const string SpeedForTerrain = "the speed at which the terrain is driven";
    public const string TerrainForSpeed = "the terrain that is driven over";
    public const string UpperNeeded = "an upper spring: it may be left out only without tender and stop nut";
    public const string RadiusNeeded = "the tyre's free radius: contact rolling_circle needs it";
    public const string FootprintNeeded = "the footprint's length: contact footprint needs it";
    public const string BothRimKeys = "sidewall and rim_rate, both or neither";
    public const string SolidBelowFree = "a solid length below the free length";
    public const string WireBelowMean = "a wire diameter below the mean diameter";
    public const string ToAboveFrom = "an end above the zone's beginning";

    // Profiles and other lists.
    public const string PlainCell = "plain text, without control characters";

    public const string ProfileNeedsFolder = "a profile file, but no scenario file to look beside";
    public const string FileBeside = "the plain name of a file beside the scenario file";
    public const string OwnProfile = "a profile file that it names";
    public const string LinkAway = "a link that leads out of the scenario's folder";
    public const string ProfileFile = "a CSV file with columns distance_<unit> and height_<unit>";
    public const string ProfileHeader = "columns distance_<unit> and height_<unit>, like distance_m,height_mm";
    public const string TwoRows = "at least two rows";
    public const string CellNumber = "a finite number";
    public const string DistanceNotFalling = "a distance not below that of the row before";
    public const string AllAtOnePlace = "every row at one distance";
    public const string SpreadOut = "a profile with some length";

    public static string MoreMistakes(int more) => $"{Whole(more)} more mistakes";

    public const string Crossed = "a bracket, brace or quote that opens and does not close in its place";

    public static string NotYaml(string reason) => $"text that is not YAML ({OneLine(reason)})";

    public static string NotCsv(string reason) => $"text that is not CSV ({OneLine(reason)})";

    public static string TooLarge(long most) => $"more than {Whole(most / 1_000_000)} MB";

    public static string Unreadable(string reason) => $"a file that cannot be read ({OneLine(reason)})";

    public static string TooDeep(int most) => $"nesting deeper than {Whole(most)}";

    public static string TooManyNodes(int most) => $"more than {Whole(most)} values";

    public static string Anchor(string name) => $"a YAML anchor (&{Shorten(name)})";

    public static string DuplicateKey(int line) => line > 0 ? $"the key a second time (first in line {Whole(line)})" : "the key a second time";

    public static string Quote(string text) => $"'{Shorten(text)}'";

    public static string UnknownUnit(string text, string unit) => $"{Quote(text)} with the unknown unit {Quote(unit)}";

    public static string OfDimension(string text, string noun) => $"{Quote(text)} ({noun})";

    public static string KeysTogether(IEnumerable<string> names) => string.Join(" and ", names.Take(5).Select(Shorten)) is { Length: > 0 } text ? text : "an empty map";

    public static string Suggest(string near) => $"'{near}'";

    public static string OneOf(IEnumerable<string> words) => "one of: " + string.Join(", ", words);

    public static string WithUnit(string noun, string units) => $"{noun} with its unit: {units}";

    public static string WholeBetween(ulong least, ulong most) =>
        $"a whole number from {least.ToString(CultureInfo.InvariantCulture)} to {most.ToString(CultureInfo.InvariantCulture)}";

    public static string OneLineOfText(int longest) => $"a line of text, at most {Whole(longest)} characters";

    public static string MapOf(IEnumerable<string> names) => "keys: " + string.Join(", ", names);

    public static string MapOfOne(IEnumerable<string> names) => "one key, one of: " + string.Join(", ", names);

    public static string MapWith(string what) => $"a map: {what}";

    public static string ListOf(string what) => $"a list, each item {what}";

    public static string TableOf(string at, string value, bool orPlain) => $"{(orPlain ? value + ", or " : "")}rows of [{at}; {value}]";

    public static string RowOf(string at, string value) => $"a row of two: {at}; {value}";

    public static string AboveZero(string noun) => $"{noun} above 0";

    public static string ZeroOrMore(string noun) => $"{noun} of 0 or more";

    public static string OrMore(string noun, string least) => $"{noun} of {least} or more";

    public static string AboveZeroAtMost(string noun, string most) => $"{noun} above 0 and at most {most}";

    public static string Between(string noun, string least, string most) => $"{noun} from {least} to {most}";

    public static string RisingColumn(string noun) => $"{noun} above that of the row before";

    public static string NotFallingColumn(string noun) => $"{noun} not below that of the row before";

    public static string MoreGas(string least) => $"more than {least} (1.02 times what the rod takes up over the stroke)";

    public static string TooManyRows(double rows) => $"{rows.ToString("#,0", CultureInfo.InvariantCulture)} rows of trace asked for (duration over sample)";

    public static string FewerRows(long most) => $"at most {Whole(most)}: a longer sample or a shorter duration";

    public static string NoSuchCase(string name) => $"no case named {Quote(name)}";

    public static string NoSuchItem(int count) => $"an index outside a list of {Whole(count)}, or a name where an index belongs";

    public static string AmbiguousFigure(string name, IEnumerable<string> all) => $"{Quote(name)}, which is {string.Join(" and ", all)}";

    public static string UnknownFigure(string name) => $"the unknown figure {Quote(name)}";

    public static string FigureTwice(string figure) => $"{figure} a second time";

    public static string OtherProfile(string name) => $"{Quote(name)}, which the scenario does not name as it was opened";

    public static string NoSuchProfile(string name) => $"no file {Quote(name)} there";

    public static string Items(int count) => $"{Whole(count)} items";

    public static string AtMostItems(int most) => $"at most {Whole(most)}";

    public static string ProfileTooLong(long most) => $"more than {Whole(most)} rows";

    public static string AtMostRows(long most) => $"at most {Whole(most)} rows: thin the profile, or split the course";

    public static string Rows(int count) => $"{Whole(count)} {(count == 1 ? "row" : "rows")}";

    public static string Beside(string other) => $"it beside {Quote(other)}";

    public static string OneColumn(string stem) => $"one column of {stem}, in one unit";

    public static string Cells(int count) => count == 1 ? "1 cell" : FormattableString.Invariant($"{count} cells");

    public static string OneCellAColumn(int columns) => FormattableString.Invariant($"{columns}, one a column (decimals with a point, 1.5)");

    public static string Header(string header) => $"the header {Quote(header)}";

    public const string AFigure = "a dotted figure of the summary, or its last part, like up_travel_used";

    private static string Whole(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);

    private static string Shorten(string text)
    {
        var line = OneLine(text);
        return line.Length <= LongestQuote ? line : line[..LongestQuote] + "…";
    }

    private static string OneLine(string text) => string.Concat(text.Take(LongestQuote * 4).Select(c => PlainText.IsShown(c) && !char.IsSurrogate(c) ? c : ' ')).Trim();
}
