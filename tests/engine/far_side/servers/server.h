// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <arpa/inet.h>
#include <fcntl.h>
#include <netinet/in.h>
#include <signal.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <filesystem>
#include <string>
#include <thread>

namespace hingepin::sync::samples {

/// A port of this computer that nobody listens on.
inline int freePort() {
  const int probe = ::socket(AF_INET, SOCK_STREAM, 0);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  socklen_t size = sizeof address;
  ::bind(probe, reinterpret_cast<sockaddr*>(&address), size);
  ::getsockname(probe, reinterpret_cast<sockaddr*>(&address), &size);
  ::close(probe);
  return ntohs(address.sin_port);
}

/// A server of this folder's scripts, as long as the object is there.
class Server {
 public:
  /// @param script its name; it is given a folder and a port, and execs the server
  Server(const std::string& script, const std::string& folder) : port_(freePort()) {
    std::filesystem::create_directories(folder);
    const std::string path = std::string(HINGEPIN_SOURCE_DIR) + "/tests/engine/far_side/servers/" + script;
    const std::string port = std::to_string(port_);
    const std::string log = folder + "/" + script + ".log";
    process_ = ::fork();
    if (process_ == 0) {
      const int out = ::open(log.c_str(), O_WRONLY | O_CREAT, 0600);
      ::dup2(out, 1);
      ::dup2(out, 2);
      ::execl("/bin/bash", "bash", path.c_str(), folder.c_str(), port.c_str(), nullptr);
      ::_exit(127);
    }
    for (int tries = 0; tries < 1200 && !listens(); ++tries) {
      int status = 0;
      if (::waitpid(process_, &status, WNOHANG) == process_) {
        process_ = -1;
        status_ = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        return;
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
  }
  ~Server() {
    if (process_ <= 0) return;
    ::kill(process_, SIGTERM);
    ::waitpid(process_, nullptr, 0);
  }
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  [[nodiscard]] int port() const { return port_; }
  [[nodiscard]] bool runs() const { return process_ > 0; }
  /// Whether what it needs is not installed.
  [[nodiscard]] bool isMissing() const { return status_ == 77; }

 private:
  [[nodiscard]] bool listens() const {
    const int probe = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    address.sin_port = htons(static_cast<std::uint16_t>(port_));
    const bool there = ::connect(probe, reinterpret_cast<sockaddr*>(&address), sizeof address) == 0;
    ::close(probe);
    return there;
  }

  int port_;
  pid_t process_ = -1;
  int status_ = -1;
};

}  // namespace hingepin::sync::samples
