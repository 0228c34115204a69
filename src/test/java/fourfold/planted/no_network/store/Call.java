// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.no_network.store;

import java.net.Socket;

/** Breaks the map on purpose: the program opens no connection. */
public final class Call {
    private Call() {}

    public static int port(Socket socket) {
        return socket.getPort();
    }
}
