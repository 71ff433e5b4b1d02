using System.Collections.Immutable;
using System.Text;

using QuarterCar.Model;
using QuarterCar.Reports.Studies;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Cli;

/// <summary>A scenario asked for on the command line: reads it and turns what is wrong with it into bad input.</summary>
/// <param name="File">As given.</param>
/// <param name="Options">Case, overrides, stop nut, units.</param>
/// <param name="Gathering">Knows where the file lies that the parts of a study read; null for the file itself.</param>
/// <param name="Keeps">True where what is read has to be kept with a part of a study.</param>
internal sealed record ScenarioInput(string File, ReadOptions Options, Gathering? Gathering = null, bool Keeps = false)
{
    private readonly List<(string Name, MemoryStream Copy)> _lists = [];

    // Read once: a file that changes meanwhile cannot give one command two scenarios, and a pipe gives its text only once.
    private readonly Lazy<(ScenarioDocument? Document, ImmutableArray<Problem> Problems)> _loaded = new(() =>
    {
        var problems = new ProblemList();
        ScenarioDocument? document = Gathering is null
            ? ScenarioDocument.Load(File, problems, Keeps)
            : ScenarioDocument.Parse(File, System.IO.File.ReadAllText(Gathering.At(File)), Path.GetDirectoryName(Gathering.At(File)), problems);
        return (document, problems.ToImmutable());
    });

    /// <summary>Where a file lies that the command names.</summary>
    public string At(string name) => Gathering?.At(name) ?? name;

    /// <summary>Takes what is read of a further file that the command names; null where nothing is kept.</summary>
    public Stream? Copy(string name)
    {
        if (!Keeps) return null;
        _lists.Add((name, new MemoryStream()));
        return _lists[^1].Copy;
    }

    /// <summary>The scenario file, parsed; null where nothing can be made of it.</summary>
    public ScenarioDocument? Load(ProblemList problems)
    {
        foreach (Problem problem in _loaded.Value.Problems) problems.Note(problem);
        return _loaded.Value.Document;
    }

    /// <summary>The scenario as read, or what is wrong with it.</summary>
    public ReadResult ReadAll() => ScenarioReader.Read(Load, Options);

    /// <summary>What was read up to now, as it was read: the scenario, the profiles beside it that it, the arguments or the lists named, and the lists.</summary>
    public IEnumerable<PartFile> Kept()
    {
        ScenarioDocument? document = Load(new ProblemList());
        yield return new PartFile(File, document?.Text ?? "");
        foreach (var (name, text) in document?.KeptProfiles ?? [])
        {
            if (name != Path.GetFileName(File)) yield return new PartFile(Path.Combine(Path.GetDirectoryName(File) ?? "", name), text);
        }

        foreach (var (name, copy) in _lists) yield return new PartFile(name, Encoding.UTF8.GetString(copy.GetBuffer(), 0, (int)copy.Length));
    }

    /// <summary>The scenario, case and overrides applied; says what became of the stop nut.</summary>
    /// <exception cref="BadInputException">With every mistake.</exception>
    public Scenario Read(Session session)
    {
        ReadResult read = ReadAll();
        if (read.Nut is { } nut && Options.Nut is null) session.Messages.WriteLine(NutWords(nut));
        return read.Scenario ?? throw new BadInputException(read.Problems);
    }

    /// <summary>Every load case with the same overrides.</summary>
    /// <exception cref="BadInputException">With every mistake of every case.</exception>
    public ImmutableArray<(string Name, Scenario Scenario)> Cases(Scenario scenario)
    {
        if (scenario.Cases.IsEmpty) return [];
        var mistakes = new ProblemList();
        var document = Load(mistakes);
        var cases = ImmutableArray.CreateBuilder<(string, Scenario)>();
        if (document is null) throw new BadInputException(mistakes.ToImmutable());
        foreach (LoadCase one in scenario.Cases)
        {
            ReadResult read = ScenarioReader.Read(document, Options with { Case = one.Name, Units = scenario.Units });
            foreach (Problem problem in read.Problems) mistakes.Note(problem);
            if (read.Scenario is { } cased) cases.Add((one.Name, cased));
        }

        return mistakes.Count == 0 ? cases.ToImmutable() : throw new BadInputException(mistakes.ToImmutable());
    }

    /// <summary>Asks something of the model; words that describe no corner become bad input with file, line and key.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cases">Load cases that the question is about beside the scenario itself.</param>
    public T Ask<T>(Func<T> question, ImmutableArray<(string Name, Scenario Scenario)> cases = default)
    {
        try
        {
            return question();
        }
        catch (CornerException e)
        {
            throw new BadInputException([Problem(e, cases.IsDefault ? null : Culprit(cases))]);
        }
    }

    private static string? Culprit(ImmutableArray<(string Name, Scenario Scenario)> cases) =>
        cases.FirstOrDefault(c => !Stands(c.Scenario)).Name;

    private static bool Stands(Scenario scenario)
    {
        try
        {
            Corner.Build(scenario.Corner);
            return true;
        }
        catch (CornerException)
        {
            return false;
        }
    }

    private Problem Problem(CornerException e, string? ofCase)
    {
        string found = (ofCase ?? Options.Case) is { } name ? $"{e.Found} (in case '{name}')" : e.Found;
        return new Problem(File, Line(e.Key), e.Key, found, e.Wanted);
    }

    /// <summary>Where the key stands in the file, or what it stands in; 0 where the file lacks both.</summary>
    private int Line(string key)
    {
        if (Load(new ProblemList()) is not { } document || !DocumentPath.TryParse(key, out var path)) return 0;
        for (int steps = path.Steps.Length; steps > 0; steps--)
        {
            if (document.Root.Find(path.Steps.AsSpan(0, steps)) is { } node) return node.Place.Line;
        }

        return 0;
    }

    private static string NutWords(NutRule nut) => nut == NutRule.Stays
        ? "The stop nut stays where it is on the body (--nut reset sets its gap anew)."
        : "The stop nut's gap is set anew as the scenario says (--nut stays leaves it where it is on the body).";
}
