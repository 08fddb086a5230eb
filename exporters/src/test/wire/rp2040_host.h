/* Included before the driver's sources: registers are looked up, not at fixed addresses. */
#include <stdint.h>

volatile uint32_t *host_register(uint32_t address);
#define REGISTER(address) (*host_register((uint32_t)(address)))
