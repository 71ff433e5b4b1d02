using System.Globalization;

using QuarterCar.Drafts;
using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Studies;

using UnitsNet;

using UnitSystem = QuarterCar.Scenarios.UnitSystem;

namespace QuarterCar;

/// <summary>
/// One corner of a vehicle, the ground it drives over (or the height it is dropped from) and its speed: a scenario file, a text, or a draft built in
/// code. Immutable; a change makes a new one. What describes no corner throws <see cref="ScenarioException"/> at once, with every mistake.
/// </summary>
public sealed class Scenario
{
    private Scenario(ScenarioDocument document, ReadOptions options)
    {
        ReadResult read = ScenarioReader.Read(document, options);
        (Document, Options, Read) = (document, options, read.Scenario ?? throw new ScenarioException(read.Problems));
    }

    /// <summary>The title.</summary>
    public string Title => Read.Title;

    /// <summary>Lower-case SHA-256 (hex) of the content: equal for equal content, whatever the file's name.</summary>
    public string Hash => Read.Hash;

    /// <summary>Names of the load cases.</summary>
    public IReadOnlyList<string> Cases => [.. Read.Cases.Select(c => c.Name)];

    internal ScenarioDocument Document { get; }

    internal ReadOptions Options { get; }

    internal Scenarios.Scenario Read { get; }

    /// <summary>Reads a scenario file (YAML).</summary>
    /// <param name="path">The file; profile files are looked for beside it.</param>
    /// <exception cref="ScenarioException">With every mistake, in the words of the command line.</exception>
    public static Scenario Load(string path) => Of(problems => ScenarioDocument.Load(path, problems));

    /// <summary>Reads a scenario from a text (YAML).</summary>
    /// <param name="yaml">The text.</param>
    /// <param name="name">Named in messages.</param>
    /// <param name="folder">Where profile files are looked for; null for nowhere.</param>
    /// <exception cref="ScenarioException">With every mistake.</exception>
    public static Scenario Parse(string yaml, string name = "scenario", string? folder = null) =>
        Of(problems => ScenarioDocument.Parse(name, yaml, folder, problems));

    /// <summary>Reads a scenario built in code, by the same rules as a file.</summary>
    /// <param name="draft">The words.</param>
    /// <param name="folder">Where profile files are looked for; null for nowhere.</param>
    /// <exception cref="ScenarioException">With every mistake.</exception>
    public static Scenario Build(ScenarioDraft draft, string? folder = null) =>
        Of(_ => ScenarioDocument.Of("draft", DraftWriter.Node(draft), folder));

    /// <summary>The scenario with one value changed; the stop nut's gap is set anew as the scenario says, unless <see cref="WithStopNut"/> says otherwise.</summary>
    /// <param name="path">Dotted path: coilover.stop_nut.gap, terrain[1].step.</param>
    /// <param name="value">As the file would have it, unit included; a map or a list in YAML; "none" removes the key.</param>
    /// <exception cref="ScenarioException">No such path, or no such value there.</exception>
    public Scenario With(string path, string value) => new(Document, Options with { Sets = [.. Options.Sets, $"{path}={value}"] });

    /// <summary>The scenario with one quantity changed.</summary>
    /// <param name="path">Dotted path.</param>
    /// <param name="value">Of the dimension that the path wants.</param>
    /// <exception cref="ScenarioException">No such path, or another dimension is wanted.</exception>
    public Scenario With(string path, IQuantity value) => With(path, QuantityTexts.Of(value));

    /// <summary>The scenario with one plain number changed.</summary>
    /// <param name="path">Dotted path.</param>
    /// <param name="value">The number.</param>
    /// <exception cref="ScenarioException">No such path, or a value with a unit is wanted there.</exception>
    public Scenario With(string path, double value) => With(path, value.ToString("R", CultureInfo.InvariantCulture));

    /// <summary>The scenario as a setup of a study changes it: all its values at once, where one without the others could not stand.</summary>
    /// <param name="setup">The values; its title is not asked.</param>
    /// <exception cref="ScenarioException">No such path, no such value there, or values that do not go together.</exception>
    public Scenario With(SetupDraft setup) => new(Document, Options with { Sets = [.. Options.Sets, .. setup.Sets] });

    /// <summary>The scenario under one of its load cases; the stop nut stays where it is on the body. Values changed by With, before or after, come on top of the case.</summary>
    /// <param name="name">The case.</param>
    /// <exception cref="ScenarioException">No such case.</exception>
    public Scenario WithCase(string name) => new(Document, Options with { Case = name });

    /// <summary>Says what the stop nut does when something else changes.</summary>
    /// <param name="rule">Stays where the scenario as written puts it on the body, or has its gap set anew.</param>
    public Scenario WithStopNut(StopNutRule rule) =>
        new(Document, Options with { Nut = rule == StopNutRule.Stays ? NutRule.Stays : NutRule.Reset });

    /// <summary>The unit system of result files and pages; without it that of the scenario's first length, force or rate.</summary>
    /// <param name="us">True for in and lbf, false for m and N.</param>
    public Scenario WithUnits(bool us) => new(Document, Options with { Units = us ? UnitSystem.Us : UnitSystem.Si });

    /// <summary>The corner at rest: ride height, rates, crossover, bind clearance, fit, frequencies, damping, load cases.</summary>
    /// <exception cref="ScenarioException">The words describe no corner that can stand.</exception>
    public Standing Stand() => Ask(() => new Standing(StandingStudy.Of(Read, Read.Cases.Select(c => (c.Name, WithCase(c.Name).Read)))));

    /// <summary>Drives the corner over its course, or drops it.</summary>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ScenarioException">The words describe no corner or course that can be computed.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public Run Run(CancellationToken cancel = default) => Ask(() => new Run(SingleRun.Of(Read, cancel)));

    internal T Ask<T>(Func<T> question)
    {
        try
        {
            return question();
        }
        catch (CornerException e)
        {
            throw new ScenarioException(Read.File, e);
        }
    }

    private static Scenario Of(Func<ProblemList, ScenarioDocument?> load)
    {
        var problems = new ProblemList();
        ScenarioDocument? document = load(problems);
        return document is not null && (document.IsWhole || problems.Count == 0)
            ? new Scenario(document, ReadOptions.Plain with { Base = StandingBase.Instance })
            : throw new ScenarioException(problems.ToImmutable());
    }
}

/// <summary>What the stop nut does when something else changes.</summary>
public enum StopNutRule
{
    /// <summary>It stays where the scenario as written puts it on the body.</summary>
    Stays,

    /// <summary>Its gap is set anew as the scenario says.</summary>
    Reset,
}
