using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

using QuarterCar.Web.Answers;
using QuarterCar.Web.State;

namespace QuarterCar.Web.Serving;

/// <summary>The addresses of the page: its files, and the questions that it asks.</summary>
internal sealed class Endpoints(OpenedScenario opened, Turns turns, CancellationToken stopping)
{
    private readonly Library _library = new(opened);
    private readonly Runs _runs = new();

    /// <summary>Maps them.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", context => Send(context, Assets.Find("index.html")));
        routes.MapGet("/page/{name}", (HttpContext context, string name) => Send(context, Assets.Find(name)));
        routes.MapGet("/api/opened", Opened);
        Question(routes, "/api/corner", RequestJson.Default.CornerRequest, new CornerAnswer(_library, _runs).Write);
        Question(routes, "/api/compare", RequestJson.Default.CompareRequest, new CompareAnswer(_library, _runs).Write);
        Question(routes, "/api/matter", RequestJson.Default.MatterRequest, new MatterAnswer(_library).Write);
        Question(routes, "/api/file", RequestJson.Default.FileRequest, new FileAnswer(_library, _runs).Write);
    }

    private static async Task Send(HttpContext context, Asset? asset)
    {
        if (asset is null)
        {
            await Words(context, StatusCodes.Status404NotFound, "The page has no such part.");
            return;
        }

        context.Response.ContentType = asset.Type;
        await context.Response.Body.WriteAsync(asset.Bytes, context.RequestAborted);
    }

    private async Task Opened(HttpContext context)
    {
        context.Response.ContentType = "application/json";
        await using var json = new Utf8JsonWriter(context.Response.Body);
        json.WriteStartObject();
        json.WriteString("name", Path.GetFileName(_library.Opened.Name));
        json.WriteString("text", _library.Opened.Text);
        json.WriteEndObject();
    }

    /// <summary>A question: JSON in, an answer out, whole or not at all; newer questions of a page cancel its older ones by closing them.</summary>
    private void Question<T>(IEndpointRouteBuilder routes, string address, JsonTypeInfo<T> type, Action<Stream, T, CancellationToken> answer)
        where T : class => routes.MapPost(address, async context =>
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stopping);
        patience.CancelAfter(PageLimits.Patience);
        try
        {
            T? request = await JsonSerializer.DeserializeAsync(context.Request.Body, type, patience.Token);
            if (request is null || Requests.Objection(request) is not null)
            {
                await Words(context, StatusCodes.Status400BadRequest, request is null ? "The request is empty." : Requests.Objection(request)!);
                return;
            }

            var body = await turns.Of(
                () =>
                {
                    var bytes = new MemoryStream();
                    answer(bytes, request, patience.Token);
                    return bytes;
                },
                patience.Token);
            context.Response.ContentType = "application/json";
            context.Response.ContentLength = body.Length;
            body.Position = 0;
            await body.CopyToAsync(context.Response.Body, context.RequestAborted);
        }
        catch (JsonException)
        {
            await Words(context, StatusCodes.Status400BadRequest, "The request is no JSON of the expected form.");
        }
        catch (BadHttpRequestException e)
        {
            await Words(context, e.StatusCode, e.StatusCode == StatusCodes.Status413PayloadTooLarge ? "The file is larger than 10 MB." : "The request was not understood.");
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Abort(); // nobody waits for the answer any more
        }
        catch (OperationCanceledException)
        {
            await Words(context, StatusCodes.Status503ServiceUnavailable, "This took longer than the page waits: shorten the course or the run, or use the command line.");
        }
        catch (OutOfMemoryException)
        {
            await Words(context, StatusCodes.Status503ServiceUnavailable, "This takes more memory than the page has: shorten the run, or check for values far out of proportion.");
        }
        catch (Exception e) when (e is not IOException)
        {
            await Words(context, StatusCodes.Status500InternalServerError, $"The program failed in a way that was not foreseen ({e.GetType().Name}); this is a fault of the program.");
        }
    });

    private static Task Words(HttpContext context, int status, string words)
    {
        if (context.Response.HasStarted) return Task.CompletedTask;
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(words);
    }
}
