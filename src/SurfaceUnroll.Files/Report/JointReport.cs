using System.Text.Json;
using SurfaceUnroll.Drawings;
using SurfaceUnroll.Jobs;

namespace SurfaceUnroll.Files.Report;

/// <summary>What the report says of how the pieces meet.</summary>
internal static class JointReport
{
    public static void Write(Utf8JsonWriter json, Development development)
    {
        json.WriteStartArray("joints");
        foreach (JointFit joint in development.Joints) WriteJoint(json, joint, JointWords.Marks(joint, development.Panels));
        json.WriteEndArray();
    }

    private static void WriteJoint(Utf8JsonWriter json, JointFit joint, int marks)
    {
        json.WriteStartObject();
        json.WriteString("label", joint.Label);
        json.WriteString("kind", JointWords.Word(joint.Spec.Kind));
        json.WriteStartArray("edges");
        foreach (JointMate mate in joint.Mates) json.WriteStringValue(mate.Edge.ToString());
        json.WriteEndArray();
        // Both edges of a butt joint give up half of its gap.
        if (joint.Spec.Kind != JointKind.Butt && joint.Spec.On < joint.Mates.Length) json.WriteString("on", joint.Mates[joint.Spec.On].Edge.ToString());
        else json.WriteNull("on");
        json.WriteNumber("width", ReportJson.Mm(joint.Spec.Width));
        json.WriteStartArray("lengths");
        foreach (JointMate mate in joint.Mates) json.WriteNumberValue(ReportJson.Mm(mate.Length));
        json.WriteEndArray();
        json.WriteNumber("difference", ReportJson.Mm(joint.Difference));
        json.WriteNumber("largestGap", ReportJson.Mm(joint.LargestGap));
        json.WriteNumber("gapAt", ReportJson.Mm(joint.GapAt));
        json.WritePropertyName("gapPlace");
        ReportJson.WritePoint(json, joint.GapPlace);
        WriteAngle(json, "leastAngleDeg", joint.Dihedral?.Least);
        WriteAngle(json, "greatestAngleDeg", joint.Dihedral?.Greatest);
        json.WriteBoolean("fits", joint.Fits);
        if (joint.Mates.Select(m => m.Lip).FirstOrDefault(lip => lip is not null) is { } strain) WriteLip(json, strain);
        else json.WriteNull("lip");
        json.WriteNumber("marks", marks);
        json.WriteEndObject();
    }

    private static void WriteAngle(Utf8JsonWriter json, string name, double? radians)
    {
        if (radians is { } angle) json.WriteNumber(name, ReportJson.Degrees(angle));
        else json.WriteNull(name);
    }

    private static void WriteLip(Utf8JsonWriter json, LipStrain lip)
    {
        json.WriteStartObject("lip");
        json.WriteNumber("maxStretch", lip.MaxStretch + 0.0);
        json.WriteNumber("maxShrink", lip.MaxShrink + 0.0);
        json.WriteNumber("notches", lip.Notches);
        json.WriteEndObject();
    }
}
