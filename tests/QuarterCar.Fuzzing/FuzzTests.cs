using System.Globalization;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Fuzzing;

/// <summary>Whatever bytes come in: no exception that nobody foresaw, no input slower than a second, memory in bounds, and every refusal names its place.</summary>
public sealed class FuzzTests
{
    private const int Seed = 1;

    // Ten readers: about a minute of every change's tests. The program gives as many inputs as one likes.
    private static readonly TimeSpan s_each = TimeSpan.FromSeconds(4);

    public static TheoryData<string> Names => [.. Readers.All.Select(r => r.Name)];

    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Folder, f)).Order(StringComparer.Ordinal)];

    private static string Folder => Checkout.At("tests", "QuarterCar.Fuzzing", "found");

    [Theory]
    [MemberData(nameof(Names))]
    public void No_mutation_of_good_and_bad_inputs_breaks_its_reader(string name)
    {
        var campaign = new Campaign(Of(name), Seed);
        var found = campaign.Run(long.MaxValue, s_each);
        Assert.True(found.IsEmpty, string.Join("\n", found.Select(f => $"{f.Words}\n  {Convert.ToBase64String(f.Input)}")));
        Assert.True(campaign.Count >= Of(name).Seeds.Length, "not even the seeds were read: " + campaign.Count.ToString(CultureInfo.InvariantCulture));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void What_once_broke_a_reader_does_not_any_more(string file) =>
        Assert.Null(Trial.Fault(Of(file.Split('/', '\\')[0]), File.ReadAllBytes(Path.Combine(Folder, file)), out _));

    private static Reader Of(string name) => Readers.All.Single(r => r.Name == name);
}
