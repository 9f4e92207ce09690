using System.ComponentModel;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using NodaTime;

namespace Training.Records;

/// <summary>The id of a thing that the records keep: a version-7 GUID (RFC 9562 §5.7), so that ids sort by when they were given.</summary>
/// <typeparam name="TSelf">The id's own type.</typeparam>
public interface IRecordsId<TSelf> where TSelf : struct, IRecordsId<TSelf>
{
    /// <summary>The GUID.</summary>
    Guid Value { get; }

    /// <summary>The id of that GUID.</summary>
    /// <param name="value">The GUID.</param>
    static abstract TSelf Of(Guid value);
}

/// <summary>What the ids have in common.</summary>
internal static class RecordsId
{
    public static TSelf New<TSelf>(Instant at) where TSelf : struct, IRecordsId<TSelf> =>
        TSelf.Of(Guid.CreateVersion7(at.ToDateTimeOffset()));

    public static bool TryParse<TSelf>(string? text, out TSelf id) where TSelf : struct, IRecordsId<TSelf>
    {
        var isId = Guid.TryParseExact(text, "D", out var value);
        id = TSelf.Of(value);
        return isId;
    }
}

/// <summary>The id of a shop.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct ShopId(Guid Value) : IRecordsId<ShopId>
{
    /// <inheritdoc/>
    public static ShopId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static ShopId New(Instant at) => RecordsId.New<ShopId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out ShopId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a person.</summary>
/// <param name="Value">The GUID.</param>
[TypeConverter(typeof(PersonIdConverter))]
public readonly record struct PersonId(Guid Value) : IRecordsId<PersonId>
{
    /// <inheritdoc/>
    public static PersonId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static PersonId New(Instant at) => RecordsId.New<PersonId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out PersonId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a sitting.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct SittingId(Guid Value) : IRecordsId<SittingId>
{
    /// <inheritdoc/>
    public static SittingId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static SittingId New(Instant at) => RecordsId.New<SittingId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out SittingId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a paper.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct PaperId(Guid Value) : IRecordsId<PaperId>
{
    /// <inheritdoc/>
    public static PaperId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static PaperId New(Instant at) => RecordsId.New<PaperId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out PaperId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of an observed run.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct RunId(Guid Value) : IRecordsId<RunId>
{
    /// <inheritdoc/>
    public static RunId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static RunId New(Instant at) => RecordsId.New<RunId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out RunId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a competency record.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct RecordId(Guid Value) : IRecordsId<RecordId>
{
    /// <inheritdoc/>
    public static RecordId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static RecordId New(Instant at) => RecordsId.New<RecordId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out RecordId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a proof.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct ProofId(Guid Value) : IRecordsId<ProofId>
{
    /// <inheritdoc/>
    public static ProofId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static ProofId New(Instant at) => RecordsId.New<ProofId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out ProofId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a job.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct JobId(Guid Value) : IRecordsId<JobId>
{
    /// <inheritdoc/>
    public static JobId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static JobId New(Instant at) => RecordsId.New<JobId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out JobId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a practice try.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct PracticeId(Guid Value) : IRecordsId<PracticeId>
{
    /// <inheritdoc/>
    public static PracticeId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static PracticeId New(Instant at) => RecordsId.New<PracticeId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out PracticeId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>The id of a draft.</summary>
/// <param name="Value">The GUID.</param>
public readonly record struct DraftId(Guid Value) : IRecordsId<DraftId>
{
    /// <inheritdoc/>
    public static DraftId Of(Guid value) => new(value);

    /// <summary>A new id.</summary>
    /// <param name="at">The time that it carries.</param>
    public static DraftId New(Instant at) => RecordsId.New<DraftId>(at);

    /// <summary>Reads an id as an address carries it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="provider">Not used.</param>
    /// <param name="id">The id where the text is one.</param>
    /// <returns>False where the text is none.</returns>
    public static bool TryParse(string? text, IFormatProvider? provider, out DraftId id) => RecordsId.TryParse(text, out id);

    /// <inheritdoc/>
    public override string ToString() => Value.ToString();
}

/// <summary>Reads and writes a <see cref="PersonId"/> as text; sign-in keeps a person's id as text in its claims.</summary>
public sealed class PersonIdConverter : TypeConverter
{
    /// <inheritdoc/>
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    /// <inheritdoc/>
    public override object? ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        PersonId.TryParse(value as string, culture, out var id) ? id : throw GetConvertFromException(value);

    /// <inheritdoc/>
    public override object? ConvertTo(
        ITypeDescriptorContext? context, CultureInfo? culture, object? value, [NotNull] Type destinationType) =>
        value is PersonId id && destinationType == typeof(string)
            ? id.ToString()
            : base.ConvertTo(context, culture, value, destinationType);
}
