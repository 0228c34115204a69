// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A PIN as it is kept: never itself, only what PBKDF2 with HMAC-SHA-256 (RFC 8018, by the Java platform's own library)
 * makes of it and a salt. Written as {@code $pbkdf2-sha256$i=ROUNDS$SALT$HASH} with Base64 parts. Four to eight digits are
 * soon tried out by whoever has the file; the rounds only make that slow.
 */
public final class Pin {
    /** Rounds advised for this function by OWASP's password storage cheat sheet (2023; from memory). */
    static final int ROUNDS = 600_000;

    private static final String BEGINNING = "$pbkdf2-sha256$i=";
    private static final int SALT_BYTES = 16;
    private static final int HASH_BITS = 256;

    private Pin() {}

    /** Whether it is 4 to 8 digits. */
    public static boolean isPossible(String pin) {
        return pin.matches("[0-9]{4,8}");
    }

    /** What is kept of a PIN, with a salt of its own. */
    static String kept(String pin, SecureRandom random, int rounds) {
        byte[] salt = new byte[SALT_BYTES];
        random.nextBytes(salt);
        Base64.Encoder text = Base64.getEncoder().withoutPadding();
        return BEGINNING + rounds + "$" + text.encodeToString(salt) + "$"
                + text.encodeToString(hash(pin.toCharArray(), salt, rounds, HASH_BITS));
    }

    /** Whether a PIN is the one of which that was kept; takes the same time wherever they differ. */
    static boolean fits(String pin, String kept) {
        String[] parts = kept.split("\\$", -1);
        if (!kept.startsWith(BEGINNING) || parts.length != 5) {
            return false;
        }
        try {
            int rounds = Integer.parseInt(parts[2].substring("i=".length()));
            byte[] salt = Base64.getDecoder().decode(parts[3]);
            byte[] hash = Base64.getDecoder().decode(parts[4]);
            return MessageDigest.isEqual(hash, hash(pin.toCharArray(), salt, rounds, 8 * hash.length));
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** PBKDF2 with HMAC-SHA-256. */
    static byte[] hash(char[] password, byte[] salt, int rounds, int bits) {
        try {
            return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(new PBEKeySpec(password, salt, rounds, bits))
                    .getEncoded();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("this Java has no PBKDF2 with HMAC-SHA-256", e);
        }
    }
}
