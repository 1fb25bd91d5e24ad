//! What the page can ask of the bench.

use crate::contract::commands::commands;
use crate::session::settings::SettingName;
use stillroom_core::MaterialId;
use stillroom_core::batch_plan::BatchWay;

commands! {
    /// What the page can ask of the bench. Text fields carry what was typed, as it was typed.
    pub enum BenchCommand;

    /// Choose how the batch is asked for.
    "set-batch-way" SetBatchWay {
        /// Which way.
        way: BatchWay as "\"mass\" | \"containers\" | \"stock\"",
    },
    /// Ask for a batch by mass.
    "set-batch-mass" SetBatchMass {
        /// As typed.
        text: String as "string",
    },
    /// Say how many containers.
    "set-container-count" SetContainerCount {
        /// As typed.
        text: String as "string",
    },
    /// Say what a container holds.
    "set-container-volume" SetContainerVolume {
        /// As typed.
        text: String as "string",
    },
    /// Say how much of a container stays empty.
    "set-headspace" SetHeadspace {
        /// As typed.
        text: String as "string",
    },
    /// Say how much of the batch is lost.
    "set-loss" SetLoss {
        /// As typed.
        text: String as "string",
    },
    /// Give the measured density of the product.
    "set-density" SetDensity {
        /// As typed; empty to estimate it.
        text: String as "string",
    },
    /// Say how much of a material is left.
    "set-stock" SetStock {
        /// Which material.
        material: MaterialId as "string",
        /// As typed.
        text: String as "string",
    },
    /// Leave a material out of what is at hand.
    "remove-stock" RemoveStock {
        /// Which material.
        material: MaterialId as "string",
    },
    /// Change a setting of this device.
    "set-setting" SetSetting {
        /// Which.
        name: SettingName as "SettingName",
        /// As typed or chosen.
        text: String as "string",
    },
}
