using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;

namespace SurfaceUnroll.Bench.Serving;

/// <summary>Keys that last as long as the server.</summary>
internal sealed class PassingKeys : IXmlRepository
{
    private readonly Lock _lock = new();
    private readonly List<XElement> _keys = [];

    public IReadOnlyCollection<XElement> GetAllElements()
    {
        lock (_lock) return [.. _keys];
    }

    public void StoreElement(XElement element, string friendlyName)
    {
        lock (_lock) _keys.Add(new XElement(element));
    }
}
