using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Interchange;

/// <summary>
/// Everything that is held about a person in one file, for the person themself and for administrators. Never a password's
/// hash, a key, a secret of an address, or what a question was drawn from; of other people nothing but their numbers.
/// </summary>
public sealed class PersonFile
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly TrainingDbContext db;
    private readonly PersonFileParts parts;

    internal PersonFile(TrainingDbContext db, PersonFileParts parts) => (this.db, this.parts) = (db, parts);

    /// <summary>The file as JSON in UTF-8.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">About whom.</param>
    public async Task<Outcome<byte[], Refusal>> Write(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.Person != person && !actor.Is(Roles.Administrator)) return Refused.NotFound;
        if (!await db.Users.AnyAsync(known => known.Id == person)) return Refused.NotFound;
        var file = new JsonObject();
        foreach (var part in parts.All) file[part.Name] = await part.Read(person);
        return JsonSerializer.SerializeToUtf8Bytes(file, Readable);
    }
}
