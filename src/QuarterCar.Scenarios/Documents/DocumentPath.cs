using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace QuarterCar.Scenarios.Documents;

/// <summary>One step of a path: a key of a map, or (name null) an index of a list, from 0.</summary>
/// <param name="Name">Key; null for an index.</param>
/// <param name="Index">Index; -1 for a key.</param>
public readonly record struct PathStep(string? Name, int Index)
{
    /// <summary>A key.</summary>
    public static PathStep Key(string name) => new(name, -1);

    /// <summary>An index from 0.</summary>
    public static PathStep At(int index) => new(null, index);
}

/// <summary>A dotted path into a document: coilover.stop_nut.gap, terrain[1].step.</summary>
/// <param name="Steps">From the root down.</param>
public readonly record struct DocumentPath(ImmutableArray<PathStep> Steps)
{
    /// <summary>Reads a path; false where it is none (empty steps, brackets that do not close, a negative index).</summary>
    public static bool TryParse(string text, out DocumentPath path)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        path = new DocumentPath([]);
        foreach (var part in text.Trim().Split('.'))
        {
            var open = part.IndexOf('[', StringComparison.Ordinal);
            var name = open < 0 ? part : part[..open];
            if (name.Length == 0 || name.Contains(']', StringComparison.Ordinal))
            {
                return false;
            }

            steps.Add(PathStep.Key(name));
            if (open >= 0 && !Indices(part[open..], steps))
            {
                return false;
            }
        }

        path = new DocumentPath(steps.ToImmutable());
        return true;
    }

    /// <summary>The path as written.</summary>
    public override string ToString() => Write(Steps);

    /// <summary>Steps as one dotted path.</summary>
    public static string Write(IEnumerable<PathStep> steps)
    {
        var text = new StringBuilder();
        foreach (var step in steps)
        {
            if (step.Name is null)
            {
                text.Append('[').Append(step.Index.ToString(CultureInfo.InvariantCulture)).Append(']');
            }
            else
            {
                text.Append(text.Length > 0 ? "." : "").Append(step.Name);
            }
        }

        return text.ToString();
    }

    private static bool Indices(string brackets, ImmutableArray<PathStep>.Builder steps)
    {
        if (!brackets.EndsWith(']'))
        {
            return false;
        }

        foreach (var index in brackets[1..^1].Split("]["))
        {
            if (!int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out var at))
            {
                return false;
            }

            steps.Add(PathStep.At(at));
        }

        return true;
    }
}
