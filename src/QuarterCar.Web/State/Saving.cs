using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.Writing;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>A setup as a scenario file: the text that was opened with its changes written in, comments kept; where that cannot be done, a clean file. Read again it is the same scenario.</summary>
internal static class Saving
{
    /// <summary>The file's text.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="read">It, read without mistakes.</param>
    public static string Of(SetupState setup, ReadSetup read)
    {
        string? text = TextEdit.Apply(setup.Text, setup.Sets);
        return text is not null && Same(text, setup, read) ? text : FlowText.File(read.Edited!);
    }

    // With the load case: it is taken of the file, not written into its values.
    private static bool Same(string text, SetupState setup, ReadSetup read)
    {
        var again = ScenarioReader.ReadText(Library.Uploaded, text, new ReadOptions(setup.LoadCase, [], null, read.Scenario!.Units, StandingBase.Instance), read.Document!.Folder).Scenario;
        return again is not null && again.Hash == read.Scenario.Hash;
    }
}
