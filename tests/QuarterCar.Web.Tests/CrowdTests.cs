using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

using QuarterCar.Web.Serving;
using QuarterCar.Web.State;

using Xunit.Abstractions;

namespace QuarterCar.Web.Tests;

/// <summary>
/// The page under fifty clients at once, slow and broken ones among them: it keeps answering, and gives each its own answer. QUARTERCAR_CROWD_SECONDS
/// makes it longer than the few seconds of a plain test.
/// </summary>
[Collection(Alone)]
public sealed class CrowdTests(ITestOutputHelper output)
{
    /// <summary>Not beside the other tests, whose waits it would make longer.</summary>
    public const string Alone = "alone";

    private const int Clients = 50;

    // Kinds of clients by number: of ten one dribbles its bytes, one sends halves and goes, one sends garbage, one breaks off while it waits; six are plain.
    private const int Slow = 6, Half = 7, Garbage = 8, Leaving = 9;

    // Weights of the clients, N: three thousand and one more each.
    private const double Weight = 3000;

    private const double SpringRate = 25_000, UnsprungWeight = 600, Stroke = 0.3; // N/m, N, m

    private static readonly TimeSpan s_time = TimeSpan.FromSeconds(double.Parse(Environment.GetEnvironmentVariable("QUARTERCAR_CROWD_SECONDS") ?? "8", CultureInfo.InvariantCulture));

    // Longest that a plain client may wait on a machine that tests share: what the page itself allows a question.
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(15);

    private readonly ConcurrentBag<double> _waits = [];
    private readonly ConcurrentBag<string> _faults = [];

    [Fact]
    public async Task Fifty_clients_at_once_each_get_their_own_answer()
    {
        await using LivePage page = await LivePage.Start(OpenedScenario.Shipped(), 0);
        var address = new Uri(page.Address);
        long before = GC.GetTotalMemory(forceFullCollection: true);
        using var end = new CancellationTokenSource(s_time);
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(i => Task.Run(() => Client(i, address, end.Token))));
        Assert.True(_faults.IsEmpty, string.Join("\n", _faults.Take(5)));
        double[] waits = [.. _waits.Order()];
        Assert.True(waits.Length >= Clients / 2, $"{waits.Length} answers");
        using var self = Process.GetCurrentProcess();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{waits.Length} answers in {s_time.TotalSeconds:0} s, wait: median {waits[waits.Length / 2] * 1e3:0} ms, 99 % {waits[(int)(0.99 * (waits.Length - 1))] * 1e3:0} ms, longest {waits[^1] * 1e3:0} ms; memory kept {(GC.GetTotalMemory(true) - before) / 1e6:0} MB, peak {self.PeakWorkingSet64 / 1e6:0} MB"));
        Assert.InRange(waits[^1], 0, s_patience.TotalSeconds);
        Assert.InRange((GC.GetTotalMemory(forceFullCollection: true) - before) / 1e6, double.NegativeInfinity, 200);

        // When they have gone, the page answers at once.
        using var client = new HttpClient { BaseAddress = address };
        await Plain(client, Clients, default);
        Assert.True(_faults.IsEmpty, string.Join("\n", _faults.Take(5)));
    }

    private async Task Client(int number, Uri address, CancellationToken end)
    {
        using var client = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromSeconds(60) };
        while (!end.IsCancellationRequested)
        {
            try
            {
                Task turn = (number % 10) switch
                {
                    Slow => Dribble(address, number, end),
                    Half => Raw(address, "POST /api/corner HTTP/1.1\r\nHost: " + address.Authority + "\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n{\"setup\":{\"te", false, end),
                    Garbage => Raw(address, Noise(number), true, end),
                    Leaving => Leave(client, number, end),
                    _ => Plain(client, number, end),
                };
                await turn;
            }
            catch (OperationCanceledException) when (end.IsCancellationRequested)
            {
            }
            catch (Exception e) when (number % 10 >= Slow && e is IOException or SocketException or HttpRequestException)
            {
                // A broken client may be hung up on.
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                _faults.Add($"client {number}: {e.GetType().Name}: {e.Message}");
            }
        }
    }

    // Asks for its own corner and holds the answer against two figures that nobody else's corner has: the title, and the shaft that it shows.
    private async Task Plain(HttpClient client, int number, CancellationToken end)
    {
        long start = Stopwatch.GetTimestamp();
        using HttpResponseMessage answer = await client.PostAsJsonAsync("/api/corner", new { setup = PageFixture.Setup([], Scenario(number)) }, end);
        string body = await answer.Content.ReadAsStringAsync(end);
        _waits.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
        if (!answer.IsSuccessStatusCode) _faults.Add($"client {number}: {(int)answer.StatusCode} {body}");
        else Check(number, body);
    }

    private void Check(int number, string body)
    {
        using var json = JsonDocument.Parse(body);
        if (!json.RootElement.TryGetProperty("result", out JsonElement result))
        {
            _faults.Add($"client {number}: {body}");
            return;
        }

        // One linear spring, ratio 1, no gas: it stands W/k in, and shows what is left of its stroke.
        double showing = PageFixture.Figure(json.RootElement, "static.ride_height_m"), wanted = Stroke - ((Weight + number) / SpringRate);
        if (result.GetProperty("title").GetString() != $"client {number}" || Math.Abs(showing - wanted) > 1e-9)
            _faults.Add($"client {number}: got {result.GetProperty("title").GetString()}, {showing} m instead of {wanted} m");
    }

    private static async Task Leave(HttpClient client, int number, CancellationToken end)
    {
        using var leave = CancellationTokenSource.CreateLinkedTokenSource(end);
        leave.CancelAfter(5 + (number % 40));
        try
        {
            using HttpResponseMessage answer = await client.PostAsJsonAsync("/api/matter", new { setup = PageFixture.Setup([]), path = "speed", figure = "acceleration.peak_g" }, leave.Token);
        }
        catch (OperationCanceledException)
        {
        }
    }

    // A byte or so at a time, the whole of it: a slow client gets its answer as well.
    private async Task Dribble(Uri address, int number, CancellationToken end)
    {
        byte[] body = JsonSerializer.SerializeToUtf8Bytes(new { setup = PageFixture.Setup([], Scenario(number)) });
        using var socket = new TcpClient();
        await socket.ConnectAsync(address.Host, address.Port, end);
        NetworkStream stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /api/corner HTTP/1.1\r\nHost: {address.Authority}\r\nContent-Type: application/json\r\nConnection: close\r\nContent-Length: {body.Length}\r\n\r\n"), end);
        for (int at = 0; at < body.Length; at += 16)
        {
            await stream.WriteAsync(body.AsMemory(at, Math.Min(16, body.Length - at)), end);
            await Task.Delay(20, end);
        }

        using var reader = new StreamReader(stream);
        string answer = await reader.ReadToEndAsync(end);
        if (!answer.StartsWith("HTTP/1.1 200", StringComparison.Ordinal)) _faults.Add($"slow client {number}: {answer}");
        else Check(number, answer[(answer.IndexOf("\r\n\r\n", StringComparison.Ordinal) + 4)..]);
    }

    private async Task Raw(Uri address, string text, bool read, CancellationToken end)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(address.Host, address.Port, end);
        NetworkStream stream = socket.GetStream();
        await stream.WriteAsync(Encoding.Latin1.GetBytes(text), end);
        if (!read)
        {
            await Task.Delay(50, end);
            return;
        }

        byte[] buffer = new byte[200];
        int got = await stream.ReadAsync(buffer, end).AsTask().WaitAsync(s_patience, end);
        string answer = Encoding.ASCII.GetString(buffer, 0, got);
        if (got > 0 && !answer.StartsWith("HTTP/1.1 4", StringComparison.Ordinal)) _faults.Add("garbage was answered with " + answer);
    }

    // Requests that are none; each is ended, so that the page need not wait for more.
    private static string Noise(int number) => (number % 4) switch
    {
        0 => "\0\u00ff\u00fe\r\n\r\n",
        1 => "GET /../../etc/passwd HTTP/1.1\r\n\r\n",
        2 => "POST /api/corner HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: -5\r\n\r\n",
        _ => "GET / HTTP/9.9\r\n\r\n",
    };

    private static string Scenario(int number) => string.Create(CultureInfo.InvariantCulture, $$"""
        title: client {{number}}
        corner: { sprung_weight: {{Weight + number}} N, unsprung_weight: {{UnsprungWeight}} N }
        tyre: { rate: 200 N/mm }
        coilover:
          stroke: {{Stroke}} m
          springs: { lower: { rate: {{SpringRate}} N/m, free_length: 400 mm, solid_length: 90 mm } }
          damper: { compression: [[1 m/s, 1500 N]], rebound: [[1 m/s, 2500 N]] }
        terrain: [{ flat: 1 m }, { bump: { height: 50 mm, length: 1 m } }]
        speed: 3 m/s
        run: { duration: 1 s }
        """);
}

/// <summary>Tests that run when all others have ended.</summary>
[CollectionDefinition(CrowdTests.Alone, DisableParallelization = true)]
public sealed class AloneCollection;
