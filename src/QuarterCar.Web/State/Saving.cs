using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.Writing;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>A setup as a scenario file: the text that was opened with its changes written in, comments kept; where that cannot be done, a clean file. Read again it is the same scenario.</summary>
internal static class Saving
{
    /// <summary>The file's text.</summary>
    /// <param name="setup">The setup without a load case: a case is taken of the file, not written into its values.</param>
    /// <param name="read">It, read without mistakes.</param>
    /// <exception cref="CornerException">The file could not be read again: a change leaves a load case without what it changes.</exception>
    public static string Of(SetupState setup, ReadSetup read)
    {
        string? text = TextEdit.Apply(setup.Text, setup.Sets);
        if (text is not null && Again(text, read).Scenario?.Hash == read.Scenario!.Hash) return text;
        text = FlowText.File(read.Edited!);
        return Again(text, read).Problems is [var first, ..] ? throw new CornerException(first.Key, first.Found, first.Wanted) : text;
    }

    private static ReadResult Again(string text, ReadSetup read) =>
        ScenarioReader.ReadText(Library.Uploaded, text, new ReadOptions(null, [], null, read.Scenario!.Units, StandingBase.Instance), read.Document!.Folder);
}
