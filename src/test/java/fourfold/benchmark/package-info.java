// SPDX-License-Identifier: Apache-2.0
/**
 * Measurements of the packaged program beside a floor measured in the same run. They are no tests and stay out of
 * {@code mvn verify}; {@code mvn verify -Dbenchmark=Start} runs one and writes its table to
 * {@code src/test/resources/benchmark}.
 */
package fourfold.benchmark;
