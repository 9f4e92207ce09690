using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Records.Storage;

/// <summary>How the records' types stand in columns: ids as they are written, instants as ticks of the UTC since 1970 so that they can be compared.</summary>
internal static class Conversions
{
    public static void Register(ModelConfigurationBuilder model)
    {
        Id<ShopId>(model);
        Id<PersonId>(model);
        Id<SittingId>(model);
        Id<PaperId>(model);
        Id<RunId>(model);
        Id<RecordId>(model);
        Id<ProofId>(model);
        Id<PracticeId>(model);
        Id<JobId>(model);
        Id<DraftId>(model);
        model.Properties<Instant>().HaveConversion<InstantConverter>();
        model.Properties<LocalDate>().HaveConversion<DayConverter>();
        model.Properties<ContentHash>().HaveConversion<HashConverter>();
        model.Properties<CompetencyId>().HaveConversion<CompetencyConverter>();
        model.Properties<ModuleId>().HaveConversion<ModuleConverter>();
        model.Properties<ScenarioId>().HaveConversion<ScenarioConverter>();
        model.Properties<ProcedureId>().HaveConversion<ProcedureConverter>();
        model.Properties<StepId>().HaveConversion<StepConverter>();
        model.Properties<VariantId>().HaveConversion<VariantConverter>();
        model.Properties<Enum>().HaveConversion<string>();
    }

    private static void Id<TId>(ModelConfigurationBuilder model) where TId : struct, IRecordsId<TId> =>
        model.Properties<TId>().HaveConversion<IdConverter<TId>>();

    private sealed class IdConverter<TId>() : ValueConverter<TId, Guid>(id => id.Value, value => IdConverter<TId>.From(value))
        where TId : struct, IRecordsId<TId>
    {
        // An expression tree cannot call a static abstract member itself.
        private static TId From(Guid value) => TId.Of(value);
    }

    private sealed class InstantConverter()
        : ValueConverter<Instant, long>(at => at.ToUnixTimeTicks(), ticks => Instant.FromUnixTimeTicks(ticks));

    // As ISO 8601 writes it, so that days sort as texts do.
    private sealed class DayConverter()
        : ValueConverter<LocalDate, string>(day => LocalDatePattern.Iso.Format(day), text => LocalDatePattern.Iso.Parse(text).Value);

    private sealed class HashConverter() : ValueConverter<ContentHash, string>(hash => hash.Hex, text => Read(text))
    {
        private static ContentHash Read(string text) => ContentHash.TryParse(text, out var hash)
            ? hash
            : throw new InvalidOperationException($"The database holds a hash that is none: {text}");
    }

    private sealed class CompetencyConverter() : ValueConverter<CompetencyId, string>(id => id.Value, text => new(text));

    private sealed class ModuleConverter() : ValueConverter<ModuleId, string>(id => id.Value, text => new(text));

    private sealed class ScenarioConverter() : ValueConverter<ScenarioId, string>(id => id.Value, text => new(text));

    private sealed class ProcedureConverter() : ValueConverter<ProcedureId, string>(id => id.Value, text => new(text));

    private sealed class StepConverter() : ValueConverter<StepId, string>(id => id.Value, text => new(text));

    private sealed class VariantConverter() : ValueConverter<VariantId, string>(id => id.Value, text => new(text));
}
