using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Sequencing;
using Training.Web.Features.Shared;

namespace Training.Web.Features.ProofFiles;

/// <summary>What the holder of a proof's link can take away and check without this server.</summary>
[AllowAnonymous]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class ProofFilesController(Training.Records.Proving.ProofFiles files) : Controller
{
    /// <summary>All credentials of the proof, with what it takes to check them without a network.</summary>
    /// <param name="token">The secret of the link.</param>
    [HttpGet("/p/{token}/pack.json")]
    public async Task<IActionResult> Pack(string token) => Secret(await files.Pack(token), "application/json", "proof.json");

    /// <summary>The credential of one record (Open Badges 3.0).</summary>
    /// <param name="token">The secret of the link.</param>
    /// <param name="credential">The record.</param>
    [HttpGet("/p/{token}/credentials/{credential}.json")]
    public async Task<IActionResult> Credential(string token, RecordId credential) =>
        Secret(await files.Credential(token, credential), "application/vc", $"record-{credential}.json");

    private IActionResult Secret(Outcome<byte[], Refusal> outcome, string type, string name)
    {
        Response.Headers["X-Robots-Tag"] = "noindex, nofollow, noarchive";
        return outcome.IsOk ? File(outcome.Value, type, name) : this.NotShown(outcome.Fault);
    }
}
