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

    /// <summary>The language that the signed-in person would rather read; of anybody else, the page's own.</summary>
    public async Task<string> Language() => await Chosen() ?? Tongues.Current.Code;

    /// <summary>The language that the signed-in person chose; null where nobody is signed in.</summary>
    public async Task<string?> Chosen() => (await Find())?.Language;

    /// <summary>The IANA name of the time zone of the person's shop; of the provider's for its own staff.</summary>
    public async Task<string> Zone() => (await Find())?.Shop?.TimeZone ?? rooms.TimeZone;

    private async Task<PersonView?> Find()
    {
        if (reader is not null) return reader;
        if (await current.Find() is not { } actor) return null;
        var person = await people.Look(actor, actor.Person);
        return person.IsOk ? reader = person.Value : null;
    }
}
