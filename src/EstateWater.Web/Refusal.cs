namespace EstateWater.Web;

/// <summary>Says what is wrong with what a command was given.</summary>
internal static class Refusal
{
    /// <summary>Writes a line a problem and gives the exit code for bad input.</summary>
    public static async Task<int> WriteAsync(TextWriter errors, IEnumerable<object> problems)
    {
        foreach (var problem in problems)
        {
            await errors.WriteLineAsync(problem.ToString());
        }

        return ExitCodes.BadInput;
    }
}
