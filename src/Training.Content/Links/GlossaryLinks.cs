using Training.Content.Yaml;

namespace Training.Content.Links;

/// <summary>Every language has the terms of the default language, and no others.</summary>
internal static class GlossaryLinks
{
    public static void Check(ContentDrafts drafts)
    {
        if (drafts.Glossary.Count == 0) return;
        if (!drafts.Glossary.TryGetValue(ContentLibrary.DefaultLanguage, out var original))
        {
            foreach (var list in drafts.Glossary.Values)
                list.Problems.Hold(Place.Start, $"There is no glossary/{ContentLibrary.DefaultLanguage}.yaml that this could translate: write it first.");
            return;
        }

        var all = original.Terms.Select(entry => entry.Id.Text).ToArray();
        foreach (var list in drafts.Glossary.Values.Where(list => list != original && !list.Problems.HasErrors))
        {
            var mine = list.Terms.Select(entry => entry.Id.Text).ToHashSet(StringComparer.Ordinal);
            foreach (var missing in all.Where(id => !mine.Contains(id)))
                list.Problems.Remark(Place.Start, $"The term \"{missing}\" is missing: it is shown in the default language.");
            foreach (var (id, _) in list.Terms.Where(entry => !all.Contains(entry.Id.Text)))
                list.Problems.Hold(id.Place, $"The glossary of the default language has no term \"{id.Text}\": mend the id, or write the term there first.");
        }
    }
}
