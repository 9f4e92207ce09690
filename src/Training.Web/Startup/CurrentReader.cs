using Training.Content;
using Training.Records.Accounts;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>For whom a page is written: the language and the time zone of the signed-in person.</summary>
/// <param name="current">Who is signed in.</param>
/// <param name="people">Looks the person up.</param>
/// <param name="rooms">Knows the time zone of the provider.</param>
public sealed class CurrentReader(CurrentActor current, People people, Rooms rooms)
{
    private PersonView? reader;

    /// <summary>The language that the person would rather read.</summary>
    public async Task<string> Language() => (await Find())?.Language ?? ContentLibrary.DefaultLanguage;

    /// <summary>The IANA name of the time zone of the person's shop; of the provider's for its own staff.</summary>
    public async Task<string> Zone() => (await Find())?.Shop?.TimeZone ?? rooms.TimeZone;

    private async Task<PersonView?> Find()
    {
        if (reader is not null) return reader;
        var actor = await current.Get();
        var person = await people.Look(actor, actor.Person);
        return person.IsOk ? reader = person.Value : null;
    }
}
