using System.Collections.Immutable;
using System.Globalization;

using QuarterCar.Model;
using QuarterCar.Scenarios;
using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;
using QuarterCar.Scenarios.Writing;
using QuarterCar.Studies.Sweeps;
using QuarterCar.Web.Form;

namespace QuarterCar.Web.State;

/// <summary>One turn of something: values typed and arrow keys pressed become changes of the setup.</summary>
/// <param name="library">Reads setups.</param>
/// <param name="units">Units of the page.</param>
internal sealed class Turn(Library library, UnitSystem units)
{
    private const string Terrain = "terrain";

    private const int MostSteps = 1000;

    /// <summary>Stands for what moves the wheel: "drop" or "course".</summary>
    public const string Excitation = "excitation";

    // Examples, for a scenario that has none of its own to go back to.
    private static readonly ImmutableArray<(string Path, string Text)> s_drop = [(Terrain, Overrides.None), ("speed", Overrides.None), ("drop", "{ height: 3 ft }")];

    private static readonly ImmutableArray<(string Path, string Text)> s_course = [("drop", Overrides.None), (Terrain, "[{ flat: 10 ft }, { step: -18 in }, { flat: 60 ft }]"), ("speed", "5 mph")];

    /// <summary>The setup after it.</summary>
    /// <param name="setup">The setup before it.</param>
    /// <param name="edits">Values typed.</param>
    /// <param name="steps">Arrow keys pressed after them.</param>
    /// <param name="cancel">Stops it between two of them: each reads the scenario again.</param>
    public SetupState Apply(SetupState setup, IEnumerable<Change> edits, IEnumerable<Step> steps, CancellationToken cancel)
    {
        foreach (Change edit in edits)
        {
            cancel.ThrowIfCancellationRequested();
            setup = Edit(setup, edit);
        }

        foreach (Step step in steps)
        {
            cancel.ThrowIfCancellationRequested();
            setup = Press(setup, step.Path, Math.Clamp(step.Count, -MostSteps, MostSteps));
        }

        return setup;
    }

    private SetupState Edit(SetupState setup, Change edit)
    {
        string text = edit.Text.Trim();
        if (edit.Path == Excitation)
        {
            bool drop = text == "drop";
            if (Written(setup) is MapNode written && written.Find(drop ? "drop" : Terrain) is not null) return Changes.Without(setup, Terrain, "speed", "drop");
            foreach ((string path, string value) in drop ? s_drop : s_course) setup = Changes.With(setup, path, value);
            return setup;
        }

        if (edit.Path == Terrain + "[+]" || (edit.Path.StartsWith(Terrain + "[", StringComparison.Ordinal) && text == Overrides.None))
            return Root(setup)?.Find([PathStep.Key(Terrain)]) is ListNode list ? Changes.With(setup, Terrain, Ground(list, edit.Path, text)) : setup;
        if (text.Length == 0) text = Overrides.None;
        return Changes.With(setup, edit.Path, WithUnit(setup, edit.Path, text));
    }

    // A bare number means the unit of the value that the field shows; where none stands there, the one that its dimension is shown in.
    private string WithUnit(SetupState setup, string path, string text)
    {
        if (!Measured.TryParse(text, out Measured m) || m.UnitName.Length > 0 || KeyPaths.Resolve(ScenarioKeys.Root, path, out _) is not { } known || Kind(known) is not { Dimension: not Dimension.Number } kind) return text;
        Unit? shown = Root(setup)?.Find(known.Steps.AsSpan()) is ScalarNode stands ? PresentNumber.Of(known, stands)?.Present.Unit : null;
        return text + " " + (shown?.Dimension == kind.Dimension ? ShownUnits.Of(shown.Name, units) : ShownUnits.Of(kind.Dimension, units));
    }

    private static string Ground(ListNode list, string path, string text)
    {
        if (path.EndsWith("[+]", StringComparison.Ordinal)) return FlowText.Of(list)[..^1] + ", " + text + "]";
        return int.TryParse(path.AsSpan(Terrain.Length + 1, path.Length - Terrain.Length - 2), NumberStyles.None, CultureInfo.InvariantCulture, out int at) && at < list.Items.Length && list.Items.Length > 1
            ? FlowText.Of(list with { Items = list.Items.RemoveAt(at) })
            : FlowText.Of(list);
    }

    private SetupState Press(SetupState setup, string path, int count)
    {
        if (count == 0 || Root(setup) is not { } root || KeyPaths.Resolve(ScenarioKeys.Root, path, out _) is not { } known) return setup;
        DocumentNode? node = root.Find(known.Steps.AsSpan());
        if (known.Kind is TableKind { OrPlainValue: false } table && node is ListNode rows) return Changes.With(setup, path, Scaled(rows, Math.Pow(1.05, count), table.Value.Dimension));
        if (known.Kind is WholeKind whole && node is ScalarNode n && ulong.TryParse(n.Text, NumberStyles.None, CultureInfo.InvariantCulture, out ulong number))
            return Changes.With(setup, path, Math.Clamp((decimal)number + count, whole.Least, whole.Most).ToString(CultureInfo.InvariantCulture));
        if (PresentNumber.Of(known, node) is not var (present, kind)) return setup;
        if (IsSpringRate(path) && OnShelf(setup, path, present.Si, count) is { } fitted) return fitted;
        string unit = present.Unit is null ? "" : ShownUnits.Of(present.Unit.Name, units);
        double to = present.Si + (count * StepSizes.Of(path, kind.Dimension, units, StepSizes.Pitch(root)));
        if (kind.Dimension == Dimension.Length && Math.Abs(to) < 1e-9) to = 0;
        return kind.Range.Holds(to) ? Changes.With(setup, path, ShownUnits.In(to, unit)) : kind.Range is { Least: 0, LeastCounts: true } ? Changes.With(setup, path, ShownUnits.In(0, unit)) : setup;
    }

    private static string Scaled(ListNode rows, double factor, Dimension value) =>
        FlowText.Of(rows with
        {
            Items = [.. rows.Items.Select(r => r is ListNode { Items: [var at, ScalarNode s] } row && Measured.TryParse(s.Text, out Measured m) && m.Dimension == value ? row with { Items = [at, s with { Text = (m with { Number = ShownUnits.Rounded(m.Number * factor) }).ToString() }] } : r)],
        });

    private static bool IsSpringRate(string path) => path.StartsWith("coilover.springs.", StringComparison.Ordinal) && path.EndsWith(".rate", StringComparison.Ordinal);

    // The next springs of the list that ships, with the inner diameter and the free length nearest to what is fitted. The scenario's own spring lies among them,
    // so that a press up and one down comes back to it and not to a stranger of its rate.
    private SetupState? OnShelf(SetupState setup, string path, double rate, int count)
    {
        if (library.Read(setup.Own, units).Scenario is not { } scenario) return null;
        string part = path[..^".rate".Length], name = part[(part.LastIndexOf('.') + 1)..];
        if (Spring(scenario, name) is not { } fitted) return null;
        SetupState opened = Changes.Without(setup, part);
        SpringData? own = library.Read(opened.Own, units).Scenario is { } before ? Spring(before, name) : null;
        TweakShelf shelf = TweakShelf.Shipped();
        if (own is not null) shelf = shelf with { Springs = [own, .. shelf.Springs], Tenders = [own, .. shelf.Tenders] };
        if (shelf.Next(fitted with { Rate = rate }, name == "tender", count, scenario.Corner.Coilover.Body?.Diameter) is not { } spring) return setup;
        if (ReferenceEquals(spring, own)) return opened;
        bool us = units == UnitSystem.Us;
        foreach ((string key, double? was, double? now) in (ReadOnlySpan<(string, double?, double?)>)
            [("wire_diameter", fitted.WireDiameter, spring.WireDiameter), ("mean_diameter", fitted.MeanDiameter, spring.MeanDiameter), ("inner_diameter", fitted.InnerDiameter, spring.InnerDiameter)])
        {
            if (was is not null) setup = Changes.With(setup, $"{part}.{key}", now is { } metres ? ShownUnits.In(metres, us ? "in" : "mm") : Overrides.None);
        }

        setup = Changes.With(setup, path, ShownUnits.In(spring.Rate, us ? "lbf/in" : "N/mm"));
        setup = Changes.With(setup, part + ".free_length", ShownUnits.In(spring.FreeLength, us ? "in" : "mm"));
        return Changes.With(setup, part + ".solid_length", ShownUnits.In(spring.SolidLength, us ? "in" : "mm"));
    }

    private static SpringData? Spring(Scenario scenario, string place) => scenario.Corner.Coilover.Springs.Placed.FirstOrDefault(p => p.Place == place).Spring;

    private DocumentNode? Written(SetupState setup) => library.Read(setup with { Changes = [], Case = null }, units).Document?.Root;

    private DocumentNode? Root(SetupState setup) => library.Read(setup, units).Edited;

    private static QuantityKind? Kind(KnownPath known) => known.Kind switch
    {
        QuantityKind quantity => quantity,
        TableKind { OrPlainValue: true } table => table.Value,
        _ => null,
    };
}
