using Microsoft.Extensions.Localization;
using Training.Records.Staffing;

namespace Training.Web.Features.Shared;

/// <summary>How a job is named.</summary>
public static class JobNames
{
    /// <summary>As it stands on a customer's proof: for whom, which vehicle, on which days.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="job">The job.</param>
    public static string ForCustomer(IStringLocalizer<Words> words, JobLine job)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(job);
        return words["{0}: {1}, {2} to {3}", job.Customer, job.Chassis, Dates.Day(job.FirstDay), Dates.Day(job.LastDay)];
    }
}
