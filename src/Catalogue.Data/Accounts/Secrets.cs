using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Catalogue.Data.Accounts;

/// <summary>Secrets that are shown once and of which only a hash is kept. They are random enough that a plain hash cannot be reversed.</summary>
public static class Secrets
{
    /// <summary>A new secret of 256 random bits, in letters that stand in an address.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));

    /// <summary>What is kept of a secret: SHA-256, lower-case hex.</summary>
    public static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
