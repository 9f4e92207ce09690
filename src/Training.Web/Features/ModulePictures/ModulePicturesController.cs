using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;
using Training.Content;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.ModulePictures;

/// <summary>The pictures of lessons. Opened by themselves they can run and load nothing.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
public sealed class ModulePicturesController(Lessons lessons) : Controller
{
    /// <summary>A picture; where its labels are translated, in the language that is asked for. Its tag is that of what is sent.</summary>
    /// <param name="module">The module.</param>
    /// <param name="name">The picture's name, such as <c>isolator.svg</c>.</param>
    /// <param name="words">The language of its labels; null for the picture as it is.</param>
    [HttpGet("/modules/{module}/pictures/{name}")]
    public IActionResult Show(string module, string name, string? words)
    {
        if (lessons.Find(module)?.FindPicture($"pictures/{name}", words ?? ContentLibrary.DefaultLanguage) is not { } picture) return NotFound();
        Response.Headers.ContentSecurityPolicy = "sandbox; default-src 'none'; style-src 'unsafe-inline'";
        Response.Headers.CacheControl = "private, no-cache";
        return File(Encoding.UTF8.GetBytes(picture.Text), "image/svg+xml; charset=utf-8", null, new EntityTagHeaderValue($"\"{picture.Hash}\""));
    }
}
