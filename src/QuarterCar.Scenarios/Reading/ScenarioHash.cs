using System.Globalization;
using System.Security.Cryptography;
using System.Text;

using QuarterCar.Model;
using QuarterCar.Model.Terrain;
using QuarterCar.Scenarios.Quantities;

namespace QuarterCar.Scenarios.Reading;

/// <summary>
/// A scenario's hash: SHA-256 of its content in one canonical form. Key order, comments, the way a number is written, its unit and the file's name do
/// not matter; a default that is written out is the default. Numbers count to 13 significant figures, SI: finer than any of them is known, coarser
/// than the rounding of a unit conversion.
/// </summary>
public static class ScenarioHash
{
    /// <summary>Lower-case hex.</summary>
    /// <param name="content">What was read, overrides applied.</param>
    /// <param name="corner">The corner with its stop nut where it stands: a nut that stayed counts where it stayed.</param>
    public static string Of(ScenarioContent content, CornerData corner)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var line in Lines(content, corner))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(line + "\n"));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static IEnumerable<string> Lines(ScenarioContent content, CornerData corner)
    {
        var limits = content.Limits.OrderBy(l => l.Figure, StringComparer.Ordinal).Select(l => $"limits.{l.Figure}={Number(l.Largest)}");
        var tolerances = content.Tolerances.OrderBy(t => t.Path, StringComparer.Ordinal)
            .Select(t => $"tolerances.{t.Path}={Number(t.Within)},{t.Relative},{t.Uniform}");
        var cases = content.Cases.SelectMany((c, i) => Case(DataMaker.PathOf("cases", i), c));
        var held = corner.Coilover.StopNut is { At: StopNutReference.UpperTravel } nut ? (string[])["coilover.stop_nut.stays=" + Number(nut.Length)] : [];
        return Values(content.Values).Concat(limits).Concat(tolerances).Concat(cases).Concat(held).Concat(Points(content.Excitation));
    }

    private static IEnumerable<string> Values(ReadValues values)
    {
        foreach (var (path, value) in values.All)
        {
            switch (value)
            {
                case NumberValue n:
                    yield return $"{path}={Number(n.Measured.Si)}";
                    break;
                case WholeValue w:
                    yield return $"{path}={w.Number.ToString(CultureInfo.InvariantCulture)}";
                    break;
                case TextValue t when !path.EndsWith(".profile.file", StringComparison.Ordinal):
                    yield return $"{path}={t.Text}";
                    break;
                case TableValue t:
                    yield return $"{path}={string.Join(';', t.Points.Select(p => Number(p.At) + "," + Number(p.Value)))}";
                    break;
            }
        }
    }

    private static IEnumerable<string> Case(string path, LoadCase c) =>
        c.Changes.OrderBy(x => x.Key, StringComparer.Ordinal).Select(x => $"{path}.{x.Key}={Change(x.Value)}").Prepend($"{path}={c.Name}");

    private static string Change(string text)
    {
        var sign = text.Length > 0 && text[0] is '+' or '-' ? text[..1] : "";
        return Measured.TryParse(text, out var m) && m.Unit is not null ? $"{sign} {Number(m.Number * m.Unit.Size)} {Number(m.Unit.Zero)}" : text;
    }

    private static IEnumerable<string> Points(Excitation excitation) => excitation is Course course
        ? course.Pieces.OfType<ProfilePiece>().SelectMany(p => p.Points.Select(q => Number(q.At) + "," + Number(q.Value)).Prepend("profile"))
        : [];

    private static string Number(double si) => (si == 0 ? 0 : si).ToString("E12", CultureInfo.InvariantCulture);
}
