using System.Globalization;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Extensions.Options;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Keys;

/// <summary>Finds out whose key a request brings, and tells those who may not go on why.</summary>
/// <remarks>No text that is made here repeats what was sent: such texts are logged.</remarks>
internal sealed class KeyAuthentication(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logs, UrlEncoder encoder, KeyRing ring,
    TimeProvider clock) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logs, encoder)
{
    public new const string Scheme = "Key";
    private const string Realm = "Bearer realm=\"part-picker\"";

    protected override Task<AuthenticateResult> HandleAuthenticateAsync() => Task.FromResult(Read());

    // No key where one is needed, or one that does not count.
    protected override async Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        AuthenticateResult result = await HandleAuthenticateOnceSafeAsync();
        bool sent = result.Failure is not null;
        Response.Headers.WWWAuthenticate = sent ? Realm + ", error=\"invalid_token\"" : Realm;
        ProblemAnswer answer = result.Failure is { } failure
            ? Problems.Of(ErrorCodes.KeyInvalid, failure.Message)
            : Problems.Of(
                ErrorCodes.KeyNeeded,
                $"Send Authorization: Bearer KEY, or from a web page {SentKey.Header}: KEY.");
        await answer.ExecuteAsync(Context);
    }

    // A key that counts, and not for this.
    protected override Task HandleForbiddenAsync(AuthenticationProperties properties)
    {
        KeyHolder holder = KeyHolder.Of(Context)!;
        string? origin = Request.Headers.Origin;
        if (!holder.MayComeFrom(origin))
            return Problems.Of(ErrorCodes.OriginNotAllowed, WrongOrigin(origin)).ExecuteAsync(Context);
        string? needed = Context.GetEndpoint()?.Metadata.GetMetadata<IAuthorizeData>()?.Policy;
        Response.Headers.WWWAuthenticate = $"{Realm}, error=\"insufficient_scope\", scope=\"{needed}\"";
        return Problems.Of(
            ErrorCodes.ScopeTooSmall,
            $"The key has the scope {WireJson.Word(holder.Key.Scope)}; this needs {needed}.").ExecuteAsync(Context);
    }

    private static string WrongOrigin(string? origin) => string.IsNullOrEmpty(origin)
        ? "The request has no header Origin, as those of a web page have: a program uses a secret key."
        : $"The key is not bound to {FaultList.Shortened(origin)}, from where it was sent.";

    private AuthenticateResult Read()
    {
        (string? sent, string? fault) = SentKey.Read(Request.Headers);
        if (fault is not null)
            return AuthenticateResult.Fail(fault);
        if (sent is null)
            return AuthenticateResult.NoResult();
        if (ring.Find(sent) is not { } key)
            return AuthenticateResult.Fail("The service knows no such key.");
        if (key.RevokedAt is not null)
            return AuthenticateResult.Fail($"The key {key.Id} was revoked.");
        return key.IsExpired(clock.GetUtcNow())
            ? AuthenticateResult.Fail(string.Create(
                CultureInfo.InvariantCulture, $"The key {key.Id} expired at {key.ExpiresAt:yyyy-MM-dd HH:mm} UTC."))
            : AuthenticateResult.Success(new AuthenticationTicket(new KeyHolder(key), Scheme));
    }
}
