using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

using QuarterCar.TestKit.Programs;

using Xunit.Abstractions;

namespace QuarterCar.Cli.Tests;

/// <summary>The sheet printed by a browser, where one is installed: one page on A4 and on Letter.</summary>
public sealed partial class SheetPrintTests(ITestOutputHelper output) : IDisposable
{
    private const string Body = "coilover.body={ seat_length: 33 in, thread: 6 in, thread_pitch: 2 mm, slider: 1.2 in, diameter: 2.5 in }";
    private const string Gas = "coilover.gas={ pressure: 180 psi, rod_diameter: 0.875 in, volume: 28 in^3, exponent: 1.4 }";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("quarry_ledge", "A4"), InlineData("quarry_ledge", "letter"), InlineData("single_spring_ditch", "letter"), InlineData("desert_table", "letter")]
    [InlineData("coil_bind", "A4"), InlineData("tender_triple", "letter")]
    public void Prints_on_one_page(string name, string paper) => Holds(name, paper);

    // Everything at once that takes room: tender, gas, body, eleven warnings, overrides over three lines.
    [Theory, InlineData("A4"), InlineData("letter")]
    public void A_crowded_sheet_still_prints_on_one_page(string paper) => Holds(
        "tender_triple", paper, Body, Gas, "coilover.preload=-1 in", "coilover.springs.upper.inner_diameter=2.4 in", "corner.motion_ratio=[[0 in, 0.9],[10 in, 1.1]]",
        "corner.unsprung_weight=500 lbf", "coilover.stop_nut={ gap: 0.2 in, at: full_droop }");

    private void Holds(string name, string paper, params string[] sets)
    {
        if (Browser() is not { } browser)
        {
            output.WriteLine("skipped: no chromium on this machine, so the sheet was not printed");
            return;
        }

        string file = Path.Combine(_scratch.Folder, "sheet.html"), pdf = Path.Combine(_scratch.Folder, "sheet.pdf");
        Asked asked = Asked.Of(["sheet", Checkout.At("tests", "data", "reference", name + ".yaml"), "--out", file, .. sets.SelectMany(s => new[] { "--set", s })]);
        Assert.True(asked.Code == ExitCode.Done, asked.Messages);
        File.WriteAllText(file, File.ReadAllText(file).Replace("@page {", $"@page {{ size: {paper};", StringComparison.Ordinal));
        var start = new ProcessStartInfo(browser) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (string argument in new[]
        {
            "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-pdf-header-footer",
            "--user-data-dir=" + Path.Combine(_scratch.Folder, "profile"), "--print-to-pdf=" + pdf, new Uri(file).AbsoluteUri,
        })
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        Task<string> messages = process.StandardError.ReadToEndAsync(), rest = process.StandardOutput.ReadToEndAsync();
        Assert.True(process.WaitForExit(ProgramProcess.Patience), "the browser hangs");
        Assert.True(File.Exists(pdf), messages.Result + rest.Result);
        Assert.Single(Pages().Matches(Encoding.Latin1.GetString(File.ReadAllBytes(pdf))));
    }

    private static string? Browser() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => new[] { "chromium", "chromium-browser" }.Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists);

    // One object a page; the tree that holds them is /Pages.
    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex Pages();
}
