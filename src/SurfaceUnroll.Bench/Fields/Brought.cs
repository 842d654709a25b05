using Microsoft.AspNetCore.Components.Forms;
using SurfaceUnroll.Bench.Desk;

namespace SurfaceUnroll.Bench.Fields;

/// <summary>Files that are brought to a page from elsewhere.</summary>
internal static class Brought
{
    /// <summary>Reads a file and has it kept.</summary>
    /// <param name="file">As the browser sends it.</param>
    /// <param name="smaller">What to do where it is too large.</param>
    /// <param name="keep">Takes what it holds; says why it could not, or null.</param>
    /// <returns>Why it was not kept; null if it was.</returns>
    public static async Task<string?> TakeAsync(IBrowserFile file, string smaller, Func<byte[], Task<string?>> keep)
    {
        try
        {
            using var content = new MemoryStream();
            await using (Stream sent = file.OpenReadStream(SideFiles.Largest)) await sent.CopyToAsync(content);
            return await keep(content.ToArray());
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException or OperationCanceledException)
        {
            return file.Size > SideFiles.Largest ? $"“{file.Name}” has more than {SideFiles.Largest >> 20} MB. {smaller}" : $"“{file.Name}” did not come through: {refused.Message} Try it again.";
        }
    }
}
