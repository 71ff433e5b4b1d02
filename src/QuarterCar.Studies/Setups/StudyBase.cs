using System.Collections.Concurrent;
using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies.Setups;

/// <summary>The scenario that a study's setups change: parsed once, its corner and course built once. Safe to ask from many threads.</summary>
public sealed class StudyBase
{
    // A study has few choices of paths; a file of setups with gaps could have many.
    private const int MostTemplates = 64;

    private readonly ScenarioDocument _document;
    private readonly ReadOptions _options;
    private readonly CourseModel? _course;
    private readonly ConcurrentDictionary<string, NumberTemplate?> _templates = new(StringComparer.Ordinal);

    /// <summary>The base of a study.</summary>
    /// <param name="document">The scenario file, parsed.</param>
    /// <param name="options">Case and overrides that make the base; the stop-nut rule for the setups, null for the default.</param>
    /// <param name="scenario">The base as read with these options.</param>
    /// <param name="hold">What each setup keeps of the base.</param>
    /// <exception cref="CornerException">The base describes no corner that can stand, or the hold has nothing to hold.</exception>
    public StudyBase(ScenarioDocument document, ReadOptions options, Scenario scenario, HoldRule hold = HoldRule.None)
    {
        (_document, _options, Scenario, Hold) = (document, options, scenario, hold);
        Corner = Corner.Build(scenario.Corner);
        try
        {
            _course = CourseModel.Of(scenario);
        }
        catch (CornerException)
        {
            // A base whose obstacle would stop the wheel may still have setups that vary it.
            _course = null;
        }

        if (hold == HoldRule.RideHeightAndCrossover && Corner.Stack.CrossoverForce is null)
            throw new CornerException("--hold", "a scenario whose slider never meets a stop nut", "a scenario with a crossover, or --hold ride_height");
    }

    /// <summary>The base.</summary>
    public Scenario Scenario { get; }

    /// <summary>The base's corner.</summary>
    public Corner Corner { get; }

    /// <summary>What each setup keeps of the base.</summary>
    public HoldRule Hold { get; }

    /// <summary>The scenario of a setup.</summary>
    /// <param name="request">What it changes.</param>
    /// <param name="hashed">True where its hash is wanted: then the whole document is read for it.</param>
    /// <exception cref="SetupException">It cannot be: the reason in one sentence.</exception>
    public Setup Make(SetupRequest request, bool hashed = false)
    {
        Scenario scenario = (hashed ? null : FromTemplate(request)) ?? Read(request);

        // A nut that is set itself cannot stay, whatever is asked of it; nor one by which a crossover is held.
        NutRule rule = Hold == HoldRule.RideHeightAndCrossover || request.Values.Any(v => SetsNut(v.Path)) ? NutRule.Reset
            : _options.Nut ?? (request.Values.Any(v => MovesNut(v.Path)) ? NutRule.Reset : NutRule.Stays);
        CornerData corner = WithWeight(scenario.Corner, request);
        bool hasNut = corner.Coilover.StopNut is not null;
        try
        {
            if (hasNut && rule == NutRule.Stays && Corner.Stack.HeldTravel is { } held)
                corner = HoldWork.NutOnBody(corner, Scenario.Corner, held);
            (corner, string note) = Hold == HoldRule.None ? (corner, "") : HoldWork.Apply(corner, Corner, Hold, scenario.Units);
            return new Setup(request, scenario with { Corner = corner }, hasNut ? rule : null, note);
        }
        catch (CornerException e)
        {
            throw new SetupException($"{e.Key}: {e.Found}; wanted {e.Wanted}");
        }
    }

    /// <summary>Rows of a setup's trace; 0 where it cannot be.</summary>
    /// <param name="request">What it changes.</param>
    public double TraceLength(SetupRequest request)
    {
        try
        {
            Scenario scenario = FromTemplate(request) ?? Read(request);
            return TraceRows.Count(scenario.Run, scenario.Excitation);
        }
        catch (SetupException)
        {
            return 0;
        }
    }

    /// <summary>The course of a setup: the base's own where it drives the same.</summary>
    /// <exception cref="CornerException">The wheel would be stopped at its hub.</exception>
    public CourseModel Course(Scenario scenario)
    {
        if (_course is not null && Same(scenario))
            return _course with { Speed = scenario.Excitation is Course c ? c.Speed : 0, DropHeight = (scenario.Excitation as Drop)?.Height };
        return CourseModel.Of(scenario);
    }

    // The whole document with the setup's values: what a template has to give the same bits as.
    private Scenario Read(SetupRequest request)
    {
        ReadOptions options = Options(request);
        ReadResult read = ScenarioReader.Read(_document, options);
        if (read.Scenario is not { } scenario)
            throw new SetupException(string.Join("; ", read.Problems.Select(p => $"{p.Key}: found {p.Found}; wanted {p.Wanted}")));
        if (_templates.Count < MostTemplates)
            _templates.GetOrAdd(PathsOf(request), _ => NumberTemplate.Of(_document, options, request.Values.Length));
        return scenario;
    }

    private Scenario? FromTemplate(SetupRequest request) =>
        _templates.GetValueOrDefault(PathsOf(request))?.With([.. request.Values.Select(v => v.Text)]);

    private ReadOptions Options(SetupRequest request) => _options with
    {
        Sets = [.. _options.Sets, .. request.Values.Select(v => v.AsSet)],
        Nut = NutRule.Reset,
        Units = Scenario.Units,
    };

    private static string PathsOf(SetupRequest request) => request.Values is [var alone] ? alone.Path : string.Join('\n', request.Values.Select(v => v.Path));

    private bool Same(Scenario scenario)
    {
        TyreData a = scenario.Corner.Tyre, b = Scenario.Corner.Tyre;
        return (scenario.Excitation, Scenario.Excitation) switch
        {
            (Course x, Course y) => Enumerable.SequenceEqual<TerrainPiece>(x.Pieces, y.Pieces) && a.Contact == b.Contact && a.Radius == b.Radius && a.Footprint == b.Footprint,
            (Drop, Drop) => true,
            _ => false,
        };
    }

    private static bool MovesNut(string path) => path.StartsWith("coilover.springs", StringComparison.Ordinal) || SetsNut(path);

    private static bool SetsNut(string path) => path.StartsWith("coilover.stop_nut", StringComparison.Ordinal) || path == "coilover";

    // A load on the springs means a weight once, at the base, unless it is varied itself.
    private CornerData WithWeight(CornerData corner, SetupRequest request) =>
        corner.SpringLoad is not null && !request.Values.Any(v => v.Path is "corner.spring_load" or "corner.sprung_weight" or "corner")
            ? corner with { SpringLoad = null, SprungWeight = Corner.SprungWeight }
            : corner;
}

/// <summary>A setup ready to stand and run.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="Scenario">Its scenario.</param>
/// <param name="Nut">What became of the stop nut; null without one.</param>
/// <param name="Note">Remark for its row.</param>
public sealed record Setup(SetupRequest Request, Scenario Scenario, NutRule? Nut, string Note);

/// <summary>A setup that cannot be; the message is its row's reason.</summary>
public sealed class SetupException(string message) : Exception(message);

/// <summary>What each setup keeps of the base.</summary>
public enum HoldRule
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Ride height, by the preload.</summary>
    RideHeight,

    /// <summary>Ride height by the preload and the crossover's shaft showing by the stop nut.</summary>
    RideHeightAndCrossover,
}
