using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Ledger;

namespace Training.Records.Proving;

/// <summary>Why a record is not to be believed, whatever its state.</summary>
public enum RecordDoubt
{
    /// <summary>The name is not the one that the record was issued to.</summary>
    AnotherName,

    /// <summary>The shop is not the one that the record was issued for.</summary>
    AnotherShop,

    /// <summary>The log does not fit, so that nothing in it proves anything.</summary>
    BrokenLog,
}

/// <summary>Holds what the database says of a record against the hashes in the log.</summary>
internal static class RecordBinding
{
    /// <summary>What does not fit; null where everything does.</summary>
    public static RecordDoubt? Doubt(CompetencyRecord record, Person person, RecordHistory known)
    {
        if (record.Salt is not { Length: >= Training.Proofs.PersonNames.PersonName.LeastSaltLength } salt
            || Salted.Name(person.DisplayName, salt) != known.Issued.Person) return RecordDoubt.AnotherName;
        return Salted.Shop(record.ShopId, salt) == known.Issued.Shop && record.Competency == known.Issued.Competency
            ? null
            : RecordDoubt.AnotherShop;
    }
}
