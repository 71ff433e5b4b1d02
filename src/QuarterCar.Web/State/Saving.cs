using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.Writing;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>A setup as a scenario file: the text that was opened with its changes written in, comments kept; where that cannot be done, a clean file. Read again it is the same scenario.</summary>
internal static class Saving
{
    private const string WithoutComments = "# Written anew: what was taken out has no line of its own, and the comments of the file before are not in this one.\n";

    /// <summary>The file's text.</summary>
    /// <param name="setup">The setup without a load case: a case is taken of the file, not written into its values.</param>
    /// <param name="read">It, read without mistakes.</param>
    /// <exception cref="CornerException">The file could not be read again: a change leaves a load case without what it changes.</exception>
    public static string Of(SetupState setup, ReadSetup read)
    {
        string? text = TextEdit.Apply(setup.Text, setup.Sets);
        if (text is not null && IsSame(Again(text, read).Scenario, read.Scenario!)) return text;
        text = (setup.Text.Contains('#', StringComparison.Ordinal) ? WithoutComments : "") + FlowText.File(read.Edited!);
        ReadResult again = Again(text, read);
        if (again.Problems is [var first, ..]) throw new CornerException(first.Key, first.Found, first.Wanted);
        return IsSame(again.Scenario, read.Scenario!) ? text : throw new CornerException("cases", "what a clean file would say otherwise", "the file edited by hand");
    }

    // The hash knows nothing of load cases.
    private static bool IsSame(Scenario? again, Scenario read) =>
        again is not null && again.Hash == read.Hash && again.Cases.Select(Words).SequenceEqual(read.Cases.Select(Words));

    private static string Words(LoadCase one) => $"{one.Name}: {string.Join(", ", one.Changes.Select(c => $"{c.Key}={c.Value}"))}";

    private static ReadResult Again(string text, ReadSetup read) =>
        ScenarioReader.ReadText(Library.Uploaded, text, new ReadOptions(null, [], null, read.Scenario!.Units, StandingBase.Instance), read.Document!.Folder);
}
