using System.Net;
using System.Net.Sockets;

using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

using QuarterCar.Web.Answers;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Serving;

/// <summary>The live page, served to this machine alone.</summary>
public sealed class LivePage : IAsyncDisposable
{
    private const long LargestBody = 10_000_000, MostConnections = 64;

    private readonly WebApplication _app;
    private readonly Turns _turns;
    private readonly CancellationTokenSource _stopping;

    private LivePage(WebApplication app, Turns turns, CancellationTokenSource stopping) => (_app, _turns, _stopping) = (app, turns, stopping);

    /// <summary>Where a browser finds it.</summary>
    public string Address { get; private set; } = "";

    /// <summary>Starts it.</summary>
    /// <param name="opened">What the page opens with.</param>
    /// <param name="port">0 for a free one.</param>
    /// <exception cref="IOException">The port is taken or not allowed.</exception>
    public static async Task<LivePage> Start(OpenedScenario opened, int port)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.Services.AddRoutingCore();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrelCore().ConfigureKestrel(o =>
        {
            o.Listen(IPAddress.Loopback, port);
            o.AddServerHeader = false;
            o.Limits.MaxRequestBodySize = LargestBody;
            o.Limits.MaxConcurrentConnections = MostConnections;
            o.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
            o.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(2);
        });
        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = TimeSpan.FromMilliseconds(300));
        WebApplication app = builder.Build();
        var page = new LivePage(app, new Turns(), new CancellationTokenSource());
        app.Use((context, next) => Gate.Check(context, () => next(context)));
        app.UseRouting();
        new Endpoints(opened, page._turns, page._stopping.Token).Map(app);
        try
        {
            await app.StartAsync();
        }
        catch (Exception e)
        {
            await page.DisposeAsync();
            if (e is SocketException) throw new IOException(e.Message, e); // as Kestrel itself says of a port that is taken, and of that alone
            throw;
        }

        _ = page._turns.Of(() => WarmUp(page._stopping.Token), page._stopping.Token);
        page.Address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return page;
    }

    // The first run of a program is slow; it is over before somebody's hand is on the page.
    private static bool WarmUp(CancellationToken cancel)
    {
        var shipped = OpenedScenario.Shipped();
        var answer = new CornerAnswer(new Library(shipped), new Runs());
        for (int i = 0; i < 3; i++) answer.Write(Stream.Null, new CornerRequest(new SetupState(shipped.Text, [], null), null, [new Step("coilover.stop_nut.gap", i)], null, null, null, null), cancel);
        return true;
    }

    /// <summary>Stops it: what is being computed is let go.</summary>
    public async ValueTask DisposeAsync()
    {
        await _stopping.CancelAsync();
        await _app.DisposeAsync();
        _turns.Dispose();
        _stopping.Dispose();
    }
}
