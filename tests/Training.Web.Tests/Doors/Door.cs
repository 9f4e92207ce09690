using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Training.Web.Tests.Doors;

/// <summary>A way into the house: a method and an address, and who may come in by it.</summary>
/// <param name="Method">GET, POST …</param>
/// <param name="Pattern">The address with its parameters, such as <c>/runs/{run}</c>.</param>
/// <param name="Endpoint">What stands behind it.</param>
public sealed partial record Door(string Method, string Pattern, Endpoint Endpoint)
{
    /// <summary>Every door that the server has, from its own list.</summary>
    public static IReadOnlyList<Door> All(IServiceProvider services)
    {
        var doors = services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .SelectMany(endpoint => (endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods is { Count: > 0 } methods ? methods : ["GET", "POST"])
                .Select(method => new Door(method, "/" + endpoint.RoutePattern.RawText!.TrimStart('/'), endpoint)))
            .OrderBy(door => door.Pattern, StringComparer.Ordinal).ThenBy(door => door.Method, StringComparer.Ordinal).ToList();
        Assert.True(doors.Count > 40, "The list of doors is too short to be the house's.");
        return doors;
    }

    /// <summary>Whether anybody may come in.</summary>
    public bool IsOpen => Endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null;

    /// <summary>Whether the door says who may come in.</summary>
    public bool SaysWho => IsOpen || Endpoint.Metadata.GetMetadata<IAuthorizeData>() is not null;

    /// <summary>Whether a form needs the house's token to be taken.</summary>
    public bool WantsToken => Method != "GET" && Endpoint.Metadata.GetMetadata<IgnoreAntiforgeryTokenAttribute>() is null;

    /// <summary>Whether somebody with these roles may come in.</summary>
    public bool Admits(params string[] roles) => IsOpen || Endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>()
        .All(wanted => wanted.Roles is null || wanted.Roles.Split(',').Select(role => role.Trim()).Intersect(roles).Any());

    /// <summary>The names of the parameters.</summary>
    public IReadOnlyList<string> Parameters => [.. Parameter().Matches(Pattern).Select(match => match.Groups["name"].Value)];

    /// <summary>The address with examples in place of its parameters; a parameter that has none is a red test.</summary>
    public string Address(IReadOnlyDictionary<string, string> examples) => Parameter().Replace(Pattern, match =>
        examples.TryGetValue(match.Groups["name"].Value, out var example) ? example
            : throw new InvalidOperationException($"{this} has a parameter without an example: add one to DoorsHouse."));

    /// <inheritdoc/>
    public override string ToString() => $"{Method} {Pattern}";

    [GeneratedRegex(@"\{(?<name>[a-z]+)(:[a-z]+)?\}", RegexOptions.IgnoreCase)]
    private static partial Regex Parameter();
}
