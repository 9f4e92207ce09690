using Training.Content;

namespace Training.Records.Demo;

/// <summary>
/// An invented world to try things in: Eastvale Training Centre's staff, the shops Quillmoor Coachworks and Brackenhill
/// Bodyworks and their people, with records in varied states.
/// </summary>
public sealed class DemoWorld
{
    /// <summary>The password of everybody in the demo.</summary>
    public const string Password = "a bare chassis at dawn";

    /// <summary>Everybody who can sign in, for the console and the sign-in page in Development.</summary>
    public static IReadOnlyList<DemoSignIn> SignIns => throw new NotImplementedException();

    /// <summary>
    /// Fills an empty database through the services, as if months had passed; a database with anybody in it stays as it
    /// is. To be called before the content folder is published otherwise.
    /// </summary>
    /// <param name="files">The content to publish and to examine by.</param>
    /// <returns>Whether anything was added.</returns>
    public Task<bool> Seed(IReadOnlyList<ContentFile> files) => throw new NotImplementedException();
}

/// <summary>Somebody who can sign in to the demo.</summary>
/// <param name="DisplayName">Their name.</param>
/// <param name="Place">Their shop, or the provider.</param>
/// <param name="Roles">What they may do.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="Password">The password.</param>
/// <param name="Story">What is to be seen with them, in one line.</param>
public sealed record DemoSignIn(
    string DisplayName, string Place, IReadOnlyList<string> Roles, string UserName, string Password, string Story);
