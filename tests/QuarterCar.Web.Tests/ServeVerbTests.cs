using System.Diagnostics;
using System.Net;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Web.Tests;

/// <summary>`serve` as a shell starts it.</summary>
public sealed class ServeVerbTests
{
    [Fact]
    public async Task It_prints_its_address_answers_there_and_ends_with_ctrl_c()
    {
        using Process process = ProgramProcess.Start(Checkout.Root, "serve", "scenarios/gravel-lane.yaml");
        string address = (await process.StandardOutput.ReadLineAsync())!;
        Assert.StartsWith("http://127.0.0.1:", address, StringComparison.Ordinal);
        using var client = new HttpClient();
        Assert.Contains("QuarterCar", await client.GetStringAsync(new Uri(address)), StringComparison.Ordinal);
        Assert.Contains("gravel-lane.yaml", await client.GetStringAsync(new Uri(address + "/api/opened")), StringComparison.Ordinal);
        ProcessResult taken = ProgramProcess.Run(Checkout.Root, "serve", "--port", address.Split(':')[^1]);
        Assert.Equal(2, taken.Code);
        Assert.Contains("which is taken", taken.Messages, StringComparison.Ordinal);
        var watch = Stopwatch.StartNew();
        using (Process kill = Process.Start("kill", ["-INT", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)])) await kill.WaitForExitAsync();
        await process.WaitForExitAsync().WaitAsync(ProgramProcess.Patience);
        Assert.Equal(130, process.ExitCode);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 5);
    }

    [Theory]
    [InlineData("serve", "no-such.yaml")]
    [InlineData("serve", "--port", "0")]
    [InlineData("serve", "--port", "x")]
    [InlineData("serve", "--port", "70000")]
    public void Bad_input_is_said_and_nothing_is_served(params string[] arguments)
    {
        ProcessResult result = ProgramProcess.Run(Checkout.Root, arguments);
        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.StartsWith("quartercar: ", result.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_loopback_address_is_listened_on()
    {
        using Process process = ProgramProcess.Start(Checkout.Root, "serve");
        try
        {
            var address = new Uri(process.StandardOutput.ReadLine()!);
            Assert.Equal(IPAddress.Loopback, IPAddress.Parse(address.Host));
            Assert.Equal([IPAddress.Loopback], System.Net.NetworkInformation.IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(l => l.Port == address.Port).Select(l => l.Address));
        }
        finally
        {
            process.Kill();
        }
    }
}
