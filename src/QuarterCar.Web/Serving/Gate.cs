using Microsoft.AspNetCore.Http;

namespace QuarterCar.Web.Serving;

/// <summary>
/// Lets in only the page itself: the host must be this machine by name or loopback address (else another site's name could be pointed here), and what
/// changes or computes must come from a page of this very address. Says on every answer that nothing may be loaded from elsewhere.
/// </summary>
internal static class Gate
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; font-src 'self'; form-action 'none'; frame-ancestors 'none'; base-uri 'none'";

    // A browser leaves it out of an address.
    private const int PlainPort = 80;

    private static readonly string[] s_hosts = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>The check before everything else.</summary>
    public static async Task Check(HttpContext context, Func<Task> next)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
        HostString host = context.Request.Host;
        if (!s_hosts.Contains(host.Host, StringComparer.OrdinalIgnoreCase) || (host.Port ?? PlainPort) != context.Connection.LocalPort)
        {
            await Refuse(context, "This page answers only to localhost.");
            return;
        }

        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method) && !OwnOrigin(context))
        {
            await Refuse(context, "This page takes requests only from itself.");
            return;
        }

        await next();
    }

    // A browser always names the origin of a POST; a program on this machine that names none is let in.
    private static bool OwnOrigin(HttpContext context)
    {
        string? site = context.Request.Headers["Sec-Fetch-Site"];
        if (site is not (null or "same-origin")) return false;
        string? origin = context.Request.Headers.Origin;
        return origin is null || string.Equals(origin, $"http://{context.Request.Host.Value}", StringComparison.OrdinalIgnoreCase);
    }

    private static Task Refuse(HttpContext context, string words)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(words);
    }
}
