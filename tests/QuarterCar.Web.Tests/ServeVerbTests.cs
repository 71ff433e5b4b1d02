using System.Diagnostics;
using System.Net;

using Microsoft.AspNetCore.Http;

using QuarterCar.TestKit.Programs;
using QuarterCar.Web.Serving;

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

    [LowPortFact]
    public void A_port_that_is_not_allowed_is_said_like_one_that_is_taken()
    {
        ProcessResult result = ProgramProcess.Shell(Checkout.Root, $"exec {LowPortFactAttribute.WithoutTheRight} $QUARTERCAR serve --port 1");
        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.StartsWith("quartercar: --port: found 1, which is taken or not allowed", result.Messages, StringComparison.Ordinal);
    }

    // A browser leaves the port 80 out of the host's name.
    [Theory]
    [InlineData("127.0.0.1", 80, true)]
    [InlineData("localhost:80", 80, true)]
    [InlineData("localhost", 8080, false)]
    [InlineData("localhost:80", 8080, false)]
    [InlineData("evil.example", 80, false)]
    public async Task The_gate_knows_its_port_from_the_hosts_name(string host, int port, bool isLetIn)
    {
        var context = new DefaultHttpContext { Request = { Method = "POST", Host = new HostString(host), Headers = { Origin = "http://" + host } }, Connection = { LocalPort = port } };
        bool wasLetIn = false;
        await Gate.Check(context, () =>
        {
            wasLetIn = true;
            return Task.CompletedTask;
        });
        Assert.Equal((isLetIn, isLetIn ? 200 : 403), (wasLetIn, context.Response.StatusCode));
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

/// <summary>A fact that needs a port that the program may not listen on; skipped, with the reason, where every port is allowed.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class LowPortFactAttribute : FactAttribute
{
    private const string FirstFree = "/proc/sys/net/ipv4/ip_unprivileged_port_start";

    public LowPortFactAttribute()
    {
        if (!File.Exists(FirstFree) || int.Parse(File.ReadAllText(FirstFree), System.Globalization.CultureInfo.InvariantCulture) <= 1 || ProgramProcess.Shell("/", WithoutTheRight + " true").Code != 0)
            Skip = "needs Linux, ports that are not for everyone, and setpriv";
    }

    /// <summary>Words of shell before a command that then may not listen on a low port.</summary>
    public static string WithoutTheRight => Environment.IsPrivilegedProcess ? "setpriv --bounding-set -net_bind_service --inh-caps -net_bind_service" : "env";
}
