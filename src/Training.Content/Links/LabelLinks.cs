using Training.Content.Modules;
using Training.Content.Yaml;

namespace Training.Content.Links;

/// <summary>
/// A module's labels in another language are those of its pictures. What is missing or left over does no harm, and a
/// picture that is drawn anew must not be held back by it: both are remarks.
/// </summary>
internal static class LabelLinks
{
    public static void Check(ContentDrafts drafts)
    {
        // Of a picture that cannot be read nobody knows the labels.
        foreach (var module in drafts.Modules.Values.Where(module => module.Labels.Count > 0 && !module.PictureProblems.Exists(problems => problems.HasErrors)))
        {
            var inPictures = module.Pictures.SelectMany(picture => PictureText.LabelsOf(picture.Text)).ToHashSet(StringComparer.Ordinal);
            foreach (var labels in module.Labels.Where(labels => !labels.Problems.HasErrors))
            {
                foreach (var (label, _) in labels.Labels.Where(entry => !inPictures.Contains(PictureText.Plain(entry.Label.Text))))
                    labels.Problems.Remark(label.Place, $"No picture of the module has the label \"{Fields.Shown(label.Text)}\": mend it, or remove the line.");
                var mine = labels.ToPictureLabels().Words;
                foreach (var missing in inPictures.Where(label => !PictureText.IsSameEverywhere(label) && !mine.ContainsKey(label)).Order(StringComparer.Ordinal))
                    labels.Problems.Remark(Place.Start, $"The label \"{Fields.Shown(missing)}\" is missing: it is shown in the default language.");
            }
        }
    }
}
