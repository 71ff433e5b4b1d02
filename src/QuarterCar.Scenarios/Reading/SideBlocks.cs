using System.Collections.Immutable;

using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>Reads the blocks whose keys are names and paths: limits and tolerances.</summary>
public static class SideBlocks
{
    /// <summary>limits: figure → largest allowed.</summary>
    public static ImmutableArray<Limit> Limits(ReadValues values, ProblemList problems)
    {
        var limits = ImmutableArray.CreateBuilder<Limit>();
        foreach (var entry in Entries(values, "limits"))
        {
            var path = "limits." + entry.Name;
            var known = FigureNames.TryResolve(entry.Name, out var figure, out var near);
            if (!known)
            {
                problems.Note(
                    entry.Place,
                    path,
                    near.Length > 1 ? Texts.AmbiguousFigure(entry.Name, near) : Texts.UnknownFigure(entry.Name),
                    near.Length == 1 ? Texts.Suggest(near[0]) : Texts.AFigure);
            }
            else if (limits.Any(l => l.Figure == figure))
            {
                problems.Note(entry.Place, path, Texts.FigureTwice(figure), Texts.KeyOnce);
            }

            if (Number(path, entry.Value, new QuantityKind(Dimension.Number, ValueRange.Any), problems) is { } largest && known)
            {
                limits.Add(new Limit(figure, largest.Si));
            }
        }

        return limits.ToImmutable();
    }

    /// <summary>tolerances: path → half-width.</summary>
    /// <param name="values">What was read of <paramref name="root"/>.</param>
    /// <param name="root">The document with its changes.</param>
    /// <param name="written">The document as written: a spring load that became a weight is still uncertain as a load.</param>
    /// <param name="problems">Takes the mistakes.</param>
    public static ImmutableArray<Tolerance> Tolerances(ReadValues values, DocumentNode root, DocumentNode written, ProblemList problems)
    {
        root = SpringLoads.Load(root) is null && SpringLoads.Load(written) is { } load && root is MapNode map && map.Find("corner") is MapNode corner
            ? map.With("corner", corner.With("spring_load", load))
            : root;
        var tolerances = ImmutableArray.CreateBuilder<Tolerance>();
        foreach (var entry in Entries(values, "tolerances"))
        {
            var kind = Varied(entry, root, problems);
            var (width, uniform) = Width("tolerances." + entry.Name, entry.Value, kind, problems);
            if (kind is not null && width is { } w && Written(entry.Name, root) is { } value)
            {
                var relative = w.Dimension == Dimension.Share;
                tolerances.Add(new Tolerance(entry.Name, value, w.Number * (w.Unit?.Size ?? 1), relative, uniform));
            }
        }

        return tolerances.ToImmutable();
    }

    /// <summary>The number's kind that a tolerance's path names; null where it names none.</summary>
    private static QuantityKind? Varied(MapEntry entry, DocumentNode root, ProblemList problems)
    {
        var path = "tolerances." + entry.Name;
        if (KeyPaths.Resolve(ScenarioKeys.Root, entry.Name, out var near) is not { } known)
        {
            problems.Note(entry.Place, path, Texts.UnknownPath, near is not null ? Texts.Suggest(near) : Texts.KnownPathWanted);
            return null;
        }

        var node = root.Find(known.Steps.AsSpan());
        var kind = KindOfNumber(known.Kind, node);
        if (kind is null || (node is null && known.Default is null))
        {
            problems.Note(entry.Place, path, kind is null ? Texts.NoNumberThere : Texts.NothingThere, Texts.ForVarying);
            return null;
        }

        return kind;
    }

    /// <summary>What stands at a path, or its default, SI; null where that is no number: then its own reading has noted it.</summary>
    private static double? Written(string path, DocumentNode root)
    {
        var known = KeyPaths.Resolve(ScenarioKeys.Root, path, out _)!;
        var text = (root.Find(known.Steps.AsSpan()) as ScalarNode)?.Text ?? known.Default;
        return text is not null && Measured.TryParse(text, out var measured) ? measured.Si : null;
    }

    /// <summary>The kind of a single number at a node; null for everything else.</summary>
    public static QuantityKind? KindOfNumber(KeyKind kind, DocumentNode? node) => kind switch
    {
        QuantityKind quantity => quantity,
        TableKind { OrPlainValue: true } table when node is null or ScalarNode => table.Value,
        _ => null,
    };

    private static (Measured? Width, bool Uniform) Width(string path, DocumentNode node, QuantityKind? kind, ProblemList problems)
    {
        if (node is not MapNode map)
        {
            return (HalfWidth(path, node, kind, problems), false);
        }

        foreach (var entry in map.Entries.Where(e => e.Name is not ("within" or "shape")))
        {
            problems.Note(entry.Place, path + "." + entry.Name, Texts.UnknownKey, Texts.OneOf(["within", "shape"]));
        }

        var shape = map.Find("shape");
        if (shape is not null and not ScalarNode { Text: "normal" or "uniform" })
        {
            problems.Note(shape.Place, path + ".shape", KindTexts.AsFound(shape), Texts.OneOf(["normal", "uniform"]));
        }

        if (map.Find("within") is { } within)
        {
            return (HalfWidth(path + ".within", within, kind, problems), shape is ScalarNode { Text: "uniform" });
        }

        problems.Note(map.Place, path + ".within", Texts.Nothing, Texts.ToleranceValue);
        return (null, false);
    }

    private static Measured? HalfWidth(string path, DocumentNode node, QuantityKind? kind, ProblemList problems)
    {
        if (node is not ScalarNode scalar || !Measured.TryParse(scalar.Text, out var measured))
        {
            problems.Note(node.Place, path, KindTexts.AsFound(node), Texts.ToleranceValue);
            return null;
        }

        var dimension = measured.Dimension == Dimension.Share || kind is null ? Dimension.Share : kind.Dimension;
        if (kind is null && measured.Dimension != Dimension.Share)
        {
            return null;
        }

        if (Number(path, node, new QuantityKind(dimension, ValueRange.Any), problems) is { Number: <= 0 })
        {
            problems.Note(node.Place, path, Texts.Quote(scalar.Text), Texts.PositiveWidth);
        }

        return measured;
    }

    private static Measured? Number(string path, DocumentNode node, QuantityKind kind, ProblemList problems)
    {
        if (node is ScalarNode scalar)
        {
            return new QuantityReader(problems).Read(path, kind, scalar);
        }

        problems.Note(node.Place, path, KindTexts.AsFound(node), KindTexts.Wanted(kind));
        return null;
    }

    private static ImmutableArray<MapEntry> Entries(ReadValues values, string block) => values.Node(block) is MapNode map ? map.Entries : [];
}
