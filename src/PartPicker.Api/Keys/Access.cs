using System.Net;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using PartPicker.Api.CommandLine;
using PartPicker.Storage;

namespace PartPicker.Api.Keys;

/// <summary>What an address needs of its caller.</summary>
/// <param name="Least">The least scope of a key.</param>
internal sealed record AccessRequirement(KeyScope Least) : IAuthorizationRequirement;

/// <summary>Decides who may.</summary>
internal sealed class Access(ServiceOptions options) : AuthorizationHandler<AccessRequirement>
{
    /// <summary>
    /// True where a request may read and ask without a key: the service serves its own machine alone, and from there the
    /// request came.
    /// </summary>
    public bool IsOpen(HttpContext http) =>
        !options.KeysNeeded && (http.Connection.RemoteIpAddress is not { } from || IPAddress.IsLoopback(from));

    protected override async Task HandleRequirementAsync(
        AuthorizationHandlerContext context, AccessRequirement requirement)
    {
        if (context.Resource is HttpContext http && await IsAllowedAsync(http, requirement.Least))
            context.Succeed(requirement);
    }

    private async Task<bool> IsAllowedAsync(HttpContext http, KeyScope least)
    {
        if (KeyHolder.Of(http) is { } holder)
            return holder.Key.Scope >= least && holder.MayComeFrom(http.Request.Headers.Origin);
        // A key that does not count is a mistake, which is told also where none is needed.
        return least == KeyScope.Read && IsOpen(http) && (await http.AuthenticateAsync()).None;
    }
}
