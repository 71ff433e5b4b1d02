using System.Collections.Immutable;

using QuarterCar.Model;
using QuarterCar.Scenarios.Documents;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Reads scenarios: parse, apply case and overrides to the document, read it from the top, keep what must stay of the scenario as written.</summary>
public static class ScenarioReader
{
    /// <summary>Reads a file.</summary>
    public static ReadResult Read(string path, ReadOptions options) => Read(problems => ScenarioDocument.Load(path, problems), options);

    /// <summary>Reads a text; profile files are looked for in <paramref name="folder"/>, if one is given.</summary>
    public static ReadResult ReadText(string name, string text, ReadOptions options, string? folder = null) =>
        Read(problems => ScenarioDocument.Parse(name, text, folder, problems), options);

    /// <summary>Reads a document that was parsed before.</summary>
    public static ReadResult Read(ScenarioDocument document, ReadOptions options) => new Reading(document, options, new ProblemList()).Result();

    /// <summary>The same with what the document said on the way: what is made of it later need not be read again.</summary>
    internal static (ReadResult Result, ScenarioContent? Content, DocumentNode Root) ReadWithContent(ScenarioDocument document, ReadOptions options)
    {
        var reading = new Reading(document, options, new ProblemList());
        var result = reading.Result();
        return (result, reading.Content, reading.Final);
    }

    /// <summary>Reads a document as it is loaded, with what was wrong with it then.</summary>
    /// <param name="load">Gives the document, or null where nothing can be made of it, and notes mistakes.</param>
    /// <param name="options">Case, overrides, stop nut, units.</param>
    public static ReadResult Read(Func<ProblemList, ScenarioDocument?> load, ReadOptions options)
    {
        var problems = new ProblemList();
        return load(problems) is { } document
            ? new Reading(document, options, problems).Result()
            : new ReadResult(null, problems.ToImmutable(), null);
    }

    /// <summary>One reading.</summary>
    private sealed class Reading(ScenarioDocument document, ReadOptions options, ProblemList problems)
    {
        private readonly Changes _changes = Changes.Of(document.Root, options);

        public DocumentNode Final { get; private set; } = document.Root;

        public ScenarioContent? Content { get; private set; }

        public ReadResult Result()
        {
            var start = options.CaseComesLast
                ? Start(WithSets(Start(document.Root, _changes.BySet), problems), _changes.ByCase)
                : Start(document.Root, [.. _changes.ByCase, .. _changes.BySet]);
            Final = options.CaseComesLast ? WithCase(start) : WithSets(WithCase(start), problems);
            var content = Content = ScenarioContent.Read(document, Final, problems);
            NoteCaseProblems(Final);
            var (corner, nut) = content is null ? (null, null) : Nut(content.Corner, start);
            return problems.Count > 0 || corner is null
                ? new ReadResult(null, problems.ToImmutable(), null)
                : new ReadResult(Made(content!, corner), [], nut);
        }

        private Scenario Made(ScenarioContent content, CornerData corner) => new(
            content.Values.Text("title")!,
            document.File,
            ScenarioHash.Of(content, corner),
            options.Units ?? FirstUnit.Of(document.Root),
            corner,
            content.Excitation,
            DataMaker.Run(content.Values),
            content.Limits,
            content.Cases,
            content.Tolerances,
            []);

        /// <summary>A document before these paths change, its spring load turned into its weight where something else at the corner does.</summary>
        private DocumentNode Start(DocumentNode root, ImmutableArray<string> paths)
        {
            if (SpringLoads.Load(root) is not { } load || !Changes.Corner(paths) || Changes.Within(paths, SpringLoads.Path))
            {
                return root;
            }

            if (ScenarioContent.Read(document, root, new ProblemList()) is not { } written)
            {
                return SpringLoads.AsWeight(root);
            }

            if (options.Base.SprungWeight(written.Corner) is { } weight)
            {
                return SpringLoads.WithWeight(root, weight);
            }

            problems.Note(load.Place, SpringLoads.Path, Texts.LoadNotPlaced, Texts.LoadAdvice);
            return SpringLoads.AsWeight(root);
        }

        private DocumentNode WithCase(DocumentNode root)
        {
            if (options.Case is not { } name)
            {
                return root;
            }

            if (CaseBlock.Find(root, name) is { } found)
            {
                return Overrides.Case(root, found.Path, found.Map, problems);
            }

            var names = CaseBlock.Read(root, new ProblemList()).Select(c => c.Name).ToArray();
            problems.Note(new Place("--case " + name, 0, 0), "cases", Texts.NoSuchCase(name), names.Length > 0 ? Texts.OneOf(names) : Texts.NoCases);
            return root;
        }

        private DocumentNode WithSets(DocumentNode root, ProblemList list) => options.Sets.Aggregate(root, (edited, set) => Overrides.Set(edited, set, list));

        private void NoteCaseProblems(DocumentNode final)
        {
            var same = ReferenceEquals((final as MapNode)?.Find("cases"), (document.Root as MapNode)?.Find("cases"));
            foreach (var problem in same ? document.CaseProblems : document.FindCaseProblems(final))
            {
                problems.Note(problem);
            }
        }

        /// <summary>The corner with its stop nut where the rule puts it.</summary>
        private (CornerData? Corner, NutRule? Rule) Nut(CornerData corner, DocumentNode start)
        {
            if (corner.Coilover.StopNut is null || !_changes.TouchCorner)
            {
                return (corner, null);
            }

            if (!_changes.NutStays)
            {
                return (corner, NutRule.Reset);
            }

            var reference = _changes.SetsComeFirst && !options.CaseComesLast ? WithSets(start, new ProblemList()) : start;
            return ScenarioContent.Read(document, reference, problems) is { } written && written.Corner.Coilover.StopNut is not null
                ? (Held(corner, written.Corner), NutRule.Stays)
                : (corner, NutRule.Reset);
        }

        /// <summary>C*' = C* + (p' − p) − (L_lower' − L_lower), free lengths (contract; physics.md section 3).</summary>
        private CornerData? Held(CornerData corner, CornerData written)
        {
            var place = document.Root.Find([PathStep.Key("coilover"), PathStep.Key("stop_nut")])?.Place ?? document.Root.Place;
            if (options.Base.HeldTravel(written) is not { } travel)
            {
                problems.Note(place, "coilover.stop_nut", Texts.NutNotPlaced, Texts.NutResetAdvice);
                return null;
            }

            var (now, then) = (corner.Coilover, written.Coilover);
            var held = travel + (now.Preload - then.Preload) - (now.Springs.Lower.FreeLength - then.Springs.Lower.FreeLength);
            if (held < 0)
            {
                problems.Note(place, "coilover.stop_nut", Texts.NutAboveSlider, Texts.NutResetAdvice);
                return null;
            }

            return corner with { Coilover = now with { StopNut = new StopNutData(held, StopNutReference.UpperTravel) } };
        }
    }
}
