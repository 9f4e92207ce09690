using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Web.Features.Shared;

namespace Training.Web.Features.IssuerDocuments;

/// <summary>Which keys are the provider's: the document of did:web. Anybody may read it.</summary>
[AllowAnonymous]
public sealed class IssuerDocumentsController(Training.Records.Issuers.SigningKeys keys) : Controller
{
    /// <summary>The document; at the second address where the provider's own has a path.</summary>
    [HttpGet("/.well-known/did.json")]
    [HttpGet("/did.json")]
    public async Task<IActionResult> Show() => this.Bytes(await keys.Document());
}
