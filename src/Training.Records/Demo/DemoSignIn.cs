using Training.Records.Accounts;

namespace Training.Records.Demo;

/// <summary>Somebody who can sign in to the demo.</summary>
/// <param name="DisplayName">Their name.</param>
/// <param name="Place">Their shop, or the provider.</param>
/// <param name="Roles">What they may do.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="Password">The password.</param>
/// <param name="Story">What is to be seen with them, in one line.</param>
public sealed record DemoSignIn(
    string DisplayName, string Place, IReadOnlyList<string> Roles, string UserName, string Password, string Story);

/// <summary>The people of the demo. All of them, the shops and the provider are invented.</summary>
internal static class DemoPeople
{
    public const string Provider = "Eastvale Training Centre";
    public const string Quillmoor = "Quillmoor Coachworks";
    public const string Brackenhill = "Brackenhill Bodyworks";

    public static readonly DemoSignIn Administrator =
        Of("Ifeoma Adeyemi", Provider, "ifeoma", "adds shops and people, withdraws records", Roles.Administrator);

    public static readonly DemoSignIn Trainer =
        Of("Tomasz Zielinski", Provider, "tomasz", "writes the content and sees its problems", Roles.Trainer);

    public static readonly DemoSignIn OtherTrainer =
        Of("Keiko Arimura", Provider, "keiko", "approves what Tomasz writes, and writes herself", Roles.Trainer);

    public static readonly DemoSignIn SittingExaminer =
        Of("Renske de Boer", Provider, "renske", "opens sittings", Roles.Examiner);

    public static readonly DemoSignIn RunExaminer =
        Of("Mateo Quispe", Provider, "mateo", "observes runs: Rania is waiting for one", Roles.Examiner);

    public static readonly DemoSignIn Owner =
        Of("Hollis Penrose", Quillmoor, "hollis", "sees who may do what, makes proofs", Roles.Owner);

    public static readonly DemoSignIn Newcomer =
        Of("Amara Okafor", Quillmoor, "amara", "has done nothing yet and can go the whole way", Roles.Technician);

    public static readonly DemoSignIn Current =
        Of("Bao Nguyen", Quillmoor, "bao", "holds a current record", Roles.Technician);

    public static readonly DemoSignIn Due =
        Of("Pilar Etxeberria", Quillmoor, "pilar", "holds a record that is due for renewal", Roles.Technician);

    public static readonly DemoSignIn Expired =
        Of("Dmytro Kovalenko", Quillmoor, "dmytro", "let a record expire", Roles.Technician);

    public static readonly DemoSignIn Suspended =
        Of("Sione Tupou", Quillmoor, "sione", "has a record that is suspended", Roles.Technician);

    public static readonly DemoSignIn Awaiting =
        Of("Rania Mansour", Quillmoor, "rania", "has passed the paper and waits to be observed", Roles.Technician);

    public static readonly DemoSignIn Foreman =
        Of("Leila Haddad", Quillmoor, "leila", "is foreman: owner and technician at once", Roles.Owner, Roles.Technician);

    public static readonly DemoSignIn OtherOwner =
        Of("Signe Dahl", Brackenhill, "signe", "owns the other shop and sees nothing of the first", Roles.Owner);

    public static readonly DemoSignIn OtherCurrent =
        Of("João Teixeira", Brackenhill, "joao", "holds a current record in the other shop", Roles.Technician);

    public static readonly DemoSignIn OtherNewcomer =
        Of("Mele Fonoti", Brackenhill, "mele", "has done nothing yet in the other shop", Roles.Technician);

    public static IReadOnlyList<DemoSignIn> All { get; } =
    [
        Newcomer, Current, Due, Expired, Suspended, Awaiting, Foreman, Owner,
        SittingExaminer, RunExaminer, Trainer, OtherTrainer, Administrator,
        OtherOwner, OtherCurrent, OtherNewcomer,
    ];

    /// <summary>More technicians of Quillmoor, whom no console lists: a shop in which there is somebody to choose from. They sign in like the others.</summary>
    public static IReadOnlyList<DemoSignIn> Crew { get; } =
    [
        OfCrew("Nikau Paraone", "nikau"), OfCrew("Ioana Marinescu", "ioana"), OfCrew("Tenzin Dolkar", "tenzin"),
        OfCrew("Kwabena Osei", "kwabena"), OfCrew("Yasmin Qureshi", "yasmin"),
    ];

    private static DemoSignIn OfCrew(string name, string userName) => Of(name, Quillmoor, userName, "works at the vehicles", Roles.Technician);

    private static DemoSignIn Of(string name, string place, string userName, string story, params string[] roles) =>
        new(name, place, roles, userName, DemoWorld.Password, story);
}
