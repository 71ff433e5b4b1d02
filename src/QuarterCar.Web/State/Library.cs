using System.Collections.Immutable;

using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

namespace QuarterCar.Web.State;

/// <summary>A setup read: the document with every change in it, and the scenario or the mistakes.</summary>
/// <param name="Document">The text, parsed; null where nothing can be made of it.</param>
/// <param name="Edited">The document's tree with the changes in it, without the load case; null likewise.</param>
/// <param name="Scenario">With the load case; null where there are mistakes.</param>
/// <param name="Problems">The mistakes.</param>
internal sealed record ReadSetup(ScenarioDocument? Document, DocumentNode? Edited, Scenario? Scenario, ImmutableArray<Problem> Problems);

/// <summary>
/// Reads the texts that browsers hold, by the reader of the command line. Files beside a scenario are read for one text alone: the one that the
/// command line named, and of its folder only the profile files that it names itself. Keeps the last few texts parsed.
/// </summary>
internal sealed class Library(OpenedScenario opened)
{
    /// <summary>What problems of an uploaded text call it.</summary>
    public const string Uploaded = "scenario";

    private readonly LastFew<(ScenarioDocument? Document, ImmutableArray<Problem> Problems)> _parsed = new();

    /// <summary>What the page opens with.</summary>
    public OpenedScenario Opened => opened;

    /// <summary>Reads a setup.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="units">Output units; null for the scenario's own.</param>
    public ReadSetup Read(SetupState setup, UnitSystem? units)
    {
        (ScenarioDocument? document, ImmutableArray<Problem> problems) = Parsed(setup.Text);
        if (document is null) return new(null, null, null, problems);
        ReadOptions options = Options(setup, units);
        DocumentNode edited = options.Sets.Aggregate(document.Root, (root, set) => Overrides.Set(root, set, new ProblemList()));
        ReadResult read = ScenarioReader.Read(document, options);
        return new(document, edited, read.Scenario, problems.IsEmpty ? read.Problems : problems);
    }

    /// <summary>How a setup is read: what the page changes belongs to the scenario, and the load case is a change on top of it.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="units">Output units; null for the scenario's own.</param>
    public static ReadOptions Options(SetupState setup, UnitSystem? units) => new(setup.LoadCase, setup.Sets, null, units, StandingBase.Instance) { CaseComesLast = true };

    private (ScenarioDocument? Document, ImmutableArray<Problem> Problems) Parsed(string text) => _parsed.Of(text, () =>
    {
        var problems = new ProblemList();
        bool own = opened.Folder is not null && text == opened.Text;
        var document = ScenarioDocument.Parse(own ? opened.Name : Uploaded, text, own ? opened.Folder : null, problems);
        return (document?.KeptToItsProfiles(), problems.ToImmutable());
    });
}

/// <summary>The scenario that the page opens with.</summary>
/// <param name="Name">For messages and downloads.</param>
/// <param name="Text">The file's text.</param>
/// <param name="Folder">Where its profile files are; null for a shipped one.</param>
public sealed record OpenedScenario(string Name, string Text, string? Folder)
{
    /// <summary>The one that ships.</summary>
    public static OpenedScenario Shipped()
    {
        const string name = "quarry-ledge.yaml";
        using Stream stream = typeof(OpenedScenario).Assembly.GetManifestResourceStream("shipped/" + name)!;
        using var reader = new StreamReader(stream);
        return new(name, reader.ReadToEnd(), null);
    }

    /// <summary>One from a file.</summary>
    /// <param name="path">As given.</param>
    /// <param name="problems">Takes the reason where it cannot be read.</param>
    /// <returns>Null where it cannot be read.</returns>
    public static OpenedScenario? Load(string path, ProblemList problems) =>
        TextFiles.Read(path, path, Texts.ScenarioFile, problems) is { } text ? new(path, text, Path.GetDirectoryName(Path.GetFullPath(path))) : null;
}
