using System.Security.Claims;
using PartPicker.Storage;

namespace PartPicker.Api.Keys;

/// <summary>A caller who sent a usable key.</summary>
internal sealed class KeyHolder(StoredKey key) : ClaimsPrincipal(new ClaimsIdentity(KeyAuthentication.Scheme))
{
    public StoredKey Key => key;

    /// <summary>The holder of the key that the request brought; null where it brought none.</summary>
    public static KeyHolder? Of(HttpContext http) => http.User as KeyHolder;

    /// <summary>False for a publishable key sent from a page, or by a program, that it is not bound to.</summary>
    public bool MayComeFrom(string? origin) => !key.IsPublishable || key.Origins.Contains(origin);
}
