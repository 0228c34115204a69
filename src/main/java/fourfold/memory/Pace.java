// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

/**
 * What holds for a child as a whole. A value; every change makes a new one.
 *
 * @param speed how fast recalled answers come
 * @param correction how the chances of the model become this child's
 */
record Pace(Speed speed, Correction correction) {
    static Pace usual(Parameters parameters) {
        return new Pace(Speed.usual(parameters), Correction.usual());
    }
}
