using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>What has a state on the vehicle.</summary>
internal static class FactChanges
{
    public static void Find(Procedure before, Procedure after, ChangeList changes) => ChangeList.Pair(
        before.Facts, after.Facts, fact => fact.Id,
        gone => changes.Gone(SubjectKind.Fact, gone.Id.Value, $"The fact “{gone.Id}” is gone."),
        isNew => changes.New(SubjectKind.Fact, isNew.Id.Value, $"There is a new fact, “{isNew.Id}”: {string.Join(", ", isNew.Values)}."),
        (old, now) =>
        {
            if (!old.Values.SequenceEqual(now.Values))
                changes.Changed(SubjectKind.Fact, now.Id.Value,
                    $"The values of “{now.Id}” are {string.Join(", ", now.Values)} now; they were {string.Join(", ", old.Values)}.");
            changes.Words(SubjectKind.Fact, now.Id.Value, Called(old), Called(now), $"“{now.Id}” and its values are called otherwise.");
        });

    // What is called by its own id says nothing that the values do not say.
    private static string Called(Fact fact) =>
        fact.Called == fact.Id.Value && fact.ValuesCalled.SequenceEqual(fact.Values.Select(value => value.Value))
            ? ""
            : $"{fact.Called}: {string.Join(", ", fact.ValuesCalled)}";
}
